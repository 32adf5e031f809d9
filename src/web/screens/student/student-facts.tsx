import type { CourseView } from '#contract';
import { isId } from '#core';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { lessonsWithout } from './skills-of-member.ts';

const say = words.student;

/** Pace and attendance: the numbers, what they mean, and a small chart of the pace beside it. */
export function StudentFacts({
  course,
  student,
}: {
  readonly course: CourseView;
  /** Whose page it is: in a group's course, what this member missed counts as missed. */
  readonly student: string;
}) {
  const format = useFormat();
  const { pace, attendance } = course;
  const without = isId('student', student)
    ? [...lessonsWithout(course, student).values()].filter(({ status }) => status === 'taught')
    : [];
  const there = attendance.taught - without.length;
  const off = Math.round(pace.percent) - 100;
  const sentence =
    Math.abs(off) < 5 ? say.pace.usual : off > 0 ? say.pace.longer(off) : say.pace.shorter(-off);
  return (
    <dl className="student-facts">
      <div>
        <dt>{say.pace.title}</dt>
        {pace.observations === 0 ? (
          <dd>{say.pace.none}</dd>
        ) : (
          <dd>
            <span className="student-figure">{say.pace.percent(Math.round(pace.percent))}</span>
            <PaceChart percent={pace.percent} low={pace.low} high={pace.high} />
            <span className="student-pace-words">
              {sentence} {say.pace.between(Math.round(pace.low), Math.round(pace.high))},{' '}
              {say.pace.from(pace.observations)}
            </span>
          </dd>
        )}
      </div>
      <div>
        <dt>{say.attendance.title}</dt>
        <dd>
          {without.length === 0
            ? say.attendance.counts(attendance.taught, attendance.missed, attendance.cancelled)
            : say.attendance.ofMember(
                { there, away: without.map(({ date }) => format.day(date, 'day')) },
                attendance.missed,
                attendance.cancelled,
              )}
        </dd>
      </div>
    </dl>
  );
}

/** A log scale from half to twice the usual minutes, since pace is a ratio. */
function PaceChart({
  percent,
  low,
  high,
}: {
  readonly percent: number;
  readonly low: number;
  readonly high: number;
}) {
  const x = (value: number) => 8 + 124 * ((Math.log2(Math.min(200, Math.max(50, value)) / 100) + 1) / 2);
  return (
    <svg
      className="pace-chart"
      viewBox="0 0 146 34"
      width="146"
      height="34"
      role="img"
      aria-label={say.pace.chart(Math.round(percent), Math.round(low), Math.round(high))}
    >
      <line className="pace-axis" x1={x(50)} x2={x(200)} y1="20" y2="20" />
      {[50, 100, 200].map((value) => (
        <g key={value}>
          <line className="pace-axis" x1={x(value)} x2={x(value)} y1="17" y2="23" />
          <text x={x(value)} y="33" textAnchor="middle">
            {value}
          </text>
        </g>
      ))}
      <line className="pace-interval" x1={x(low)} x2={x(high)} y1="10" y2="10" />
      <ellipse
        className="pace-point"
        cx={x(percent)}
        cy="10"
        rx="5.5"
        ry="4"
        transform={`rotate(-24 ${x(percent)} 10)`}
      />
    </svg>
  );
}
