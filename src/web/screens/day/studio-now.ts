// What time it is in the studio. The server says so with each studio view; between two views the time that has passed
// here is added, so that the machine's own zone and a demo studio's fixed clock both come out right.

import { addDays, minutesOf, type PlainDate, type PlainTime } from '#core';

export interface StudioNow {
  readonly date: PlainDate;
  readonly time: PlainTime;
}

/** The studio's day and time `elapsed` milliseconds after it was `told`; goes over midnight, never backwards. */
export function studioNow(told: StudioNow, elapsed: number): StudioNow {
  const total = minutesOf(told.time) + Math.max(0, Math.floor(elapsed / 60_000));
  const two = (n: number) => String(n).padStart(2, '0');
  const minute = total % 1440;
  return {
    date: addDays(told.date, Math.floor(total / 1440)),
    time: `${two(Math.floor(minute / 60))}:${two(minute % 60)}` as PlainTime,
  };
}
