// The demo's term, laid around today: eleven weeks, of which five are taught and the sixth is under way.

import { addDays, type PlainDate, weekdayOf } from '#core';

export interface DemoCalendar {
  /** Monday of the first week. */
  readonly starts: PlainDate;
  /** Sunday of the eleventh. */
  readonly ends: PlainDate;
  readonly harbourDay: PlainDate;
  /** Monday and Sunday of the break week. */
  readonly breakStarts: PlainDate;
  readonly breakEnds: PlainDate;
  /** Saturday of the tenth week. */
  readonly concert: PlainDate;
}

export const weeksTaught = 5;

export function createDemoCalendar(today: PlainDate): DemoCalendar {
  const monday = addDays(today, 1 - weekdayOf(today));
  const starts = addDays(monday, -7 * weeksTaught);
  const week = (n: number) => addDays(starts, 7 * (n - 1));
  return {
    starts,
    ends: addDays(week(11), 6),
    harbourDay: addDays(week(4), 4),
    breakStarts: week(8),
    breakEnds: addDays(week(8), 6),
    concert: addDays(week(10), 5),
  };
}
