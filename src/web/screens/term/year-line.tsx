// The year on one line: terms are strokes, holidays are bars of rest, today is a thin amber line.

import type { TermView } from '#contract';
import { addDays, daysBetween, type PlainDate } from '#core';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

const says = words.term.year;
const width = 1000;

/** First days of the months from one day to another. */
function monthsBetween(from: PlainDate, to: PlainDate): readonly PlainDate[] {
  const months: PlainDate[] = [];
  for (let day = from; day <= to; day = addDays(day, 1)) if (day.endsWith('-01')) months.push(day);
  return months;
}

export interface YearLineProps {
  readonly view: TermView;
  readonly today: PlainDate;
}

export function YearLine({ view: { terms, holidays }, today }: YearLineProps) {
  const format = useFormat();
  const ends = terms.flatMap((t) => [t.starts, t.ends]).toSorted();
  const [first] = ends;
  const last = ends.at(-1);
  if (!first || !last) return null;
  const from = addDays(first < today ? first : today, -7);
  const to = addDays(last > today ? last : today, 7);
  const whole = Math.max(1, daysBetween(from, to));
  const at = (day: PlainDate) => (daysBetween(from, day) / whole) * width;
  const shown = holidays.filter((h) => h.ends >= from && h.starts <= to);
  const label = says.label(
    terms.map((t) => `${t.name}, ${format.days(t.starts, t.ends)}`).join('; '),
    shown.map((h) => `${h.name}, ${format.days(h.starts, h.ends)}`).join('; ') || '0',
  );
  return (
    <svg className="year-line" viewBox={`0 0 ${width} 84`} role="img" aria-label={label}>
      {monthsBetween(from, to).map((day) => (
        <g key={day}>
          <line x1={at(day)} x2={at(day)} y1="34" y2="50" className="year-month" />
          <text x={at(day) + 3} y="76" className="year-name">
            {format.day(day, 'day').replace(/\d+\s?|\.\s/g, '')}
          </text>
        </g>
      ))}
      <line x1="0" x2={width} y1="42" y2="42" className="year-staff" />
      {terms.map((t) => (
        <g key={t.id}>
          <line x1={at(t.starts)} x2={at(addDays(t.ends, 1))} y1="42" y2="42" className="year-term" />
          <text x={at(t.starts)} y="24" className="year-title">
            {t.name}
          </text>
        </g>
      ))}
      {shown.map((h) => (
        <rect
          key={h.id}
          x={at(h.starts)}
          width={Math.max(3, at(addDays(h.ends, 1)) - at(h.starts))}
          y="37"
          height="10"
          className="year-rest"
        />
      ))}
      {today >= from && today <= to && (
        <line x1={at(today)} x2={at(today)} y1="28" y2="60" className="year-now" />
      )}
    </svg>
  );
}
