import { lazy, Suspense, useMemo, useState } from 'react';
import type { CourseView, SkillStandingView } from '#contract';
import { addDays, type Id } from '#core';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { LevelNote } from '../../components/level-note.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { LongList } from './long-list.tsx';
import { ObserveForm } from './observe-form.tsx';
import { monthsOf, notesOf, spanOf, type TimelineSpan } from './skill-timeline.ts';
import { skillsOfMember } from './skills-of-member.ts';

// Loaded when a take is wanted: the page comes without it.
const KeptTake = lazy(async () => ({ default: (await import('../../takes/kept-take.tsx')).KeptTake }));

const say = words.student.skills;
/** Shown at once, so that the list does not run on alone beside the units; what is due comes first. */
const mostSkills = 10;

/** Skills and levels over time: each on a small staff, the predicted recall beside it. */
export function SkillList({
  course,
  member,
}: {
  readonly course: CourseView;
  /** Whose page it is: of a group's course, as this member was seen. */
  readonly member: Id<'student'>;
}) {
  const [observing, setObserving] = useState<SkillStandingView | null>(null);
  const [hearing, setHearing] = useState<string | null>(null);
  const span = useMemo(
    () => spanOf(course.skills, course.today, addDays(course.today, -28)),
    [course.skills, course.today],
  );
  const skills = useMemo(
    () => [...skillsOfMember(course, member)].sort(byDue(course.today)),
    [course, member],
  );
  const observed = skills.filter((skill) => skill.history.length > 0);
  const unobserved = skills.filter((skill) => skill.history.length === 0);
  const row = (skill: SkillStandingView) => (
    <SkillRow
      key={skill.skill}
      skill={skill}
      span={span}
      today={course.today}
      onObserve={() => setObserving(skill)}
      onHear={setHearing}
    />
  );
  return (
    <section className="student-part" aria-labelledby="skills-title">
      <h2 id="skills-title">{say.title}</h2>
      {skills.length === 0 ? (
        <p className="soft">{say.empty}</p>
      ) : observed.length === 0 ? (
        <p className="soft">{say.noneObserved}</p>
      ) : (
        <>
          <p className="faint">{say.axis}</p>
          <LongList items={observed} most={mostSkills} className="skill-list">
            {row}
          </LongList>
        </>
      )}
      {unobserved.length > 0 && (
        <details className="skills-unobserved">
          <summary>{say.unobserved(unobserved.length)}</summary>
          <ol className="skill-list">{unobserved.map(row)}</ol>
        </details>
      )}
      <Suspense fallback={null}>
        {hearing !== null && <KeptTake id={hearing} course={course} onClose={() => setHearing(null)} />}
      </Suspense>
      {observing && <ObserveForm course={course} skill={observing} onClose={() => setObserving(null)} />}
    </section>
  );
}

/** What is due comes first, then what has been observed, then the rest; ongoing skills last. */
const byDue = (today: string) => (a: SkillStandingView, b: SkillStandingView) =>
  rank(a, today) - rank(b, today);
const rank = (skill: SkillStandingView, today: string) =>
  (skill.ongoing ? 4 : 0) + (skill.due !== null && skill.due <= today ? 0 : skill.level === null ? 2 : 1);

function SkillRow({
  skill,
  span,
  today,
  onObserve,
  onHear,
}: {
  readonly skill: SkillStandingView;
  readonly span: TimelineSpan;
  readonly today: string;
  readonly onObserve: () => void;
  /** Opens a take. */
  readonly onHear: (take: string) => void;
}) {
  const format = useFormat();
  const send = useCommand();
  const facts = [skill.ongoing ? say.ongoing : areaNames[skill.area]];
  if (skill.level === null) facts.push(say.never);
  if (skill.recall !== null) facts.push(say.recall(format.share(skill.recall)));
  if (skill.due !== null)
    facts.push((skill.due <= today ? say.dueSince : say.due)(format.day(skill.due, 'day')));
  // Oldest first: the last is the level that stands, or a newer one that a take does not show.
  const newest = skill.history.findLast((one) => one.take !== null);
  return (
    <li className="skill-row">
      <div className="skill-words">
        <span className="skill-observed-title">{sentenceCase(skill.title)}</span>
        <span className={skill.due !== null && skill.due <= today ? 'skill-facts due' : 'skill-facts'}>
          {facts.join(' · ')}
        </span>
      </div>
      {skill.history.length > 0 && <SkillStaff skill={skill} span={span} />}
      <div className="skill-deeds">
        {newest?.take && (
          <Button
            kind="plain"
            aria-label={words.takes.hearOf(skill.title, format.day(newest.date, 'day'))}
            onPress={() => newest.take && onHear(newest.take)}
          >
            {words.takes.hearIt}
          </Button>
        )}
        <Button aria-label={`${say.observe}: ${skill.title}`} onPress={onObserve}>
          {say.observe}
        </Button>
      </div>
      {skill.history.length > 0 && (
        <details>
          <summary>{say.history(skill.history.length)}</summary>
          <ul className="skill-history">
            {[...skill.history].reverse().map((one) => (
              <li key={one.observation}>
                <LevelNote level={one.level} size={20} decorative />
                <span>
                  {say.on(format.day(one.date, 'day'), words.levels[one.level].name.toLowerCase())}
                  {one.note && <span className="faint"> {one.note}</span>}
                </span>
                {one.take && (
                  <Button
                    kind="plain"
                    aria-label={words.takes.hearOf(skill.title, format.day(one.date, 'day'))}
                    onPress={() => one.take && onHear(one.take)}
                  >
                    {words.takes.hearIt}
                  </Button>
                )}
                <Button
                  kind="plain"
                  aria-label={say.removeOf(format.day(one.date, 'day'))}
                  onPress={() => void send({ type: 'observe.remove', observation: one.observation })}
                >
                  {say.remove}
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

const width = 280;
const gap = 7;
const top = 12;

/** Five lines for five levels; a notehead for each observation at its day and level. */
function SkillStaff({ skill, span }: { readonly skill: SkillStandingView; readonly span: TimelineSpan }) {
  const format = useFormat();
  const x = (share: number) => 8 + share * (width - 24);
  const y = (level: number) => top + (4 - level) * gap;
  const notes = notesOf(skill.history, span, 14 / (width - 24));
  const told = skill.history.map((one) =>
    say.on(format.day(one.date, 'day'), words.levels[one.level].name.toLowerCase()),
  );
  return (
    <svg
      className="skill-staff"
      viewBox={`0 0 ${width} 58`}
      role="img"
      aria-label={told.length > 0 ? told.join('; ') : say.never}
    >
      {[0, 1, 2, 3, 4].map((level) => (
        <line key={level} className="skill-line" x1="0" x2={width} y1={y(level)} y2={y(level)} />
      ))}
      {monthsOf(span).map((month) => (
        <g key={month.date}>
          <line className="skill-month" x1={x(month.x)} x2={x(month.x)} y1={y(4)} y2={y(0)} />
          <text x={x(month.x) + 3} y="55">
            {format.day(month.date, 'day')}
          </text>
        </g>
      ))}
      <line className="skill-now" x1={x(1) + 9} x2={x(1) + 9} y1={y(4) - 4} y2={y(0) + 4} />
      {notes.map((note) => (
        <g key={note.observation} transform={`translate(${x(note.x) - 8.25} ${y(note.level) - 15.1})`}>
          <LevelNote level={note.level} size={22} decorative />
        </g>
      ))}
    </svg>
  );
}
