// On which days a weekly slot has lessons: its weekday, within its own span, within some term, on no day of a holiday.

import { addDays, daysBetween, type PlainDate, type Weekday, weekdayOf } from '#core';

/** A stretch of days, both ends included. */
export interface Span {
  readonly starts: PlainDate;
  readonly ends: PlainDate;
}

export interface WeeklySlot {
  readonly weekday: Weekday;
  readonly starts: PlainDate;
  /** Last day, included; null while it goes on. */
  readonly ends: PlainDate | null;
}

/** The longest a term or holiday may be, in days: a year and a month's grace. */
export const longestSpan = 400;

/**
 * The slot's days from `from` on, in order, each once though terms may overlap.
 * Tuesdays in a term of 1 to 20 September 2026 with a holiday on the 8th → `2026-09-01`, `2026-09-15`
 */
export function lessonDates(
  slot: WeeklySlot,
  terms: readonly Span[],
  holidays: readonly Span[],
  from: PlainDate,
): readonly PlainDate[] {
  const dates = new Set<PlainDate>();
  for (const term of terms) {
    const starts = latest(latest(term.starts, slot.starts), from);
    const ends = slot.ends !== null && slot.ends < term.ends ? slot.ends : term.ends;
    if (starts > ends) continue;
    const ahead = (slot.weekday - weekdayOf(starts) + 7) % 7;
    const weeks = Math.floor((daysBetween(starts, ends) - ahead) / 7);
    for (let week = 0; week <= weeks; week++) {
      const day = addDays(starts, ahead + 7 * week);
      if (findSpan(holidays, day) === null) dates.add(day);
    }
  }
  return [...dates].sort();
}

/** The first of the spans that holds the day, or null. */
export function findSpan<S extends Span>(spans: readonly S[], day: PlainDate): S | null {
  return spans.find((span) => span.starts <= day && day <= span.ends) ?? null;
}

const latest = (a: PlainDate, b: PlainDate): PlainDate => (a > b ? a : b);
