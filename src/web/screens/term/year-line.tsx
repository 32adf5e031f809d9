// The year on one line: terms are strokes, holidays are bars of rest, today is a thin amber line.

import { Fragment } from 'react';
import type { TermView } from '#contract';
import { addDays, daysBetween, type PlainDate } from '#core';
import { place } from '../../components/place.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

const says = words.term.year;

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
  const share = (day: PlainDate) => (daysBetween(from, day) / whole) * 100;
  const at = (day: PlainDate) => place({ left: `${share(day)}%` });
  const across = (starts: PlainDate, ends: PlainDate) =>
    place({ left: `${share(starts)}%`, width: `${share(addDays(ends, 1)) - share(starts)}%` });
  const shown = holidays.filter((h) => h.ends >= from && h.starts <= to);
  const months = monthsBetween(from, to).filter((day) => share(day) < 95);
  const label = says.label(
    terms.map((t) => `${t.name}, ${format.days(t.starts, t.ends)}`).join('; '),
    shown.map((h) => `${h.name}, ${format.days(h.starts, h.ends)}`).join('; ') || '0',
  );
  return (
    <div className="year-line" data-many={months.length > 5} role="img" aria-label={label}>
      <span className="year-staff" />
      {months.map((day) => (
        <b key={day} className="year-month" style={at(day)}>
          {format.day(day, 'monthName')}
        </b>
      ))}
      {terms.map((t) => (
        <Fragment key={t.id}>
          <span className="year-title" style={across(t.starts, t.ends)}>
            {t.name}
          </span>
          <span className="year-term" style={across(t.starts, t.ends)} />
        </Fragment>
      ))}
      {shown
        .filter((h) => h.starts >= from && h.ends <= to)
        .map((h) => (
          <span key={h.id} className="year-rest" style={across(h.starts, h.ends)} />
        ))}
      {today >= from && today <= to && <span className="year-now" style={at(today)} />}
    </div>
  );
}
