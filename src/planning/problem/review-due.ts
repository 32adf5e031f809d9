import { daysBetween, type PlainDate } from '#core';

/**
 * For each lesson, the first later lesson at least `gapDays` days after it, or null when there is none: where the
 * revisit of an activity completed there falls due.
 */
export function reviewDues(
  lessons: readonly { readonly date: string }[],
  gapDays: number,
): readonly (number | null)[] {
  const start = lessons[0]?.date as PlainDate | undefined;
  const days = lessons.map(({ date }) => (start === undefined ? 0 : daysBetween(start, date as PlainDate)));
  return days.map((day, at) => {
    const due = days.findIndex((later, k) => k > at && later >= day + gapDays);
    return due < 0 ? null : due;
  });
}
