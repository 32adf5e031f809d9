// Where a skill's observations stand on its small staff: time across, level up, one line for each of the five levels.

import type { SkillStandingView } from '#contract';
import { daysBetween, type PlainDate } from '#core';

export interface TimelineSpan {
  readonly from: PlainDate;
  readonly to: PlainDate;
}
export interface TimelineNote {
  readonly observation: string;
  readonly level: 0 | 1 | 2 | 3 | 4;
  /** 0..1 across. */
  readonly x: number;
}

/** From the first observation of any skill to today; four weeks at least, so that a first note does not fill the line. */
export function spanOf(
  skills: readonly Pick<SkillStandingView, 'history'>[],
  today: PlainDate,
  earliest: PlainDate,
): TimelineSpan {
  let from = earliest;
  for (const { history } of skills) for (const { date } of history) if (date < from) from = date;
  return { from, to: today };
}

/** The notes of a skill, oldest first; those of one day stand side by side through `apart`, a share of the width. */
export function notesOf(
  history: SkillStandingView['history'],
  span: TimelineSpan,
  apart: number,
): readonly TimelineNote[] {
  const days = Math.max(1, daysBetween(span.from, span.to));
  const oldestFirst = [...history].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const wanted = oldestFirst.map((one) => Math.min(1, Math.max(0, daysBetween(span.from, one.date) / days)));
  // Pushed apart from the right, so that the newest stays at its day and nothing leaves the line.
  const xs = [...wanted];
  for (let i = xs.length - 2; i >= 0; i--)
    xs[i] = Math.max(0, Math.min(xs[i] ?? 0, (xs[i + 1] ?? 1) - apart));
  return oldestFirst.map((one, i) => ({ observation: one.observation, level: one.level, x: xs[i] ?? 0 }));
}

/** First days of the months within a span, for the axis. */
export function monthsOf(span: TimelineSpan): readonly { readonly date: PlainDate; readonly x: number }[] {
  const days = Math.max(1, daysBetween(span.from, span.to));
  const months: { date: PlainDate; x: number }[] = [];
  let [year, month] = [Number(span.from.slice(0, 4)), Number(span.from.slice(5, 7))];
  for (;;) {
    month = month === 12 ? 1 : month + 1;
    if (month === 1) year += 1;
    const date = `${year}-${String(month).padStart(2, '0')}-01` as PlainDate;
    if (date > span.to) return months;
    months.push({ date, x: daysBetween(span.from, date) / days });
  }
}
