// The days between two lessons, on which practice is ticked off.

import { addDays, daysBetween, type PlainDate } from '#core';

const mostDays = 7;

/** Days after a lesson and before the next, up to seven; seven days where the next is not fixed. */
export function practiceDays(lesson: PlainDate, next: PlainDate | null): readonly PlainDate[] {
  const between = next === null ? mostDays : daysBetween(lesson, next) - 1;
  const count = Math.min(mostDays, Math.max(1, between));
  return Array.from({ length: count }, (_, i) => addDays(lesson, i + 1));
}
