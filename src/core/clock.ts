// Time as an argument: rules ask a Clock they are handed; the server makes the real one, tests and the demo a fixed one.

import { Temporal } from 'temporal-polyfill';
import type { PlainDate, PlainTime } from './plain-date.ts';

export interface Clock {
  /** Today in the studio's time zone. */
  today(): PlainDate;
  /** The time of day in the studio's time zone. */
  time(): PlainTime;
  /** An instant for audit stamps, ISO 8601 in UTC with milliseconds. */
  instant(): string;
}

/** The platform's clock, read in an IANA time zone such as `Europe/Lisbon`; without one, the machine's own. */
export function createSystemClock(timeZone: string = Temporal.Now.timeZoneId()): Clock {
  return {
    today: () => Temporal.Now.plainDateISO(timeZone).toString() as PlainDate,
    time: () => Temporal.Now.plainTimeISO(timeZone).toString({ smallestUnit: 'minute' }) as PlainTime,
    instant: () => Temporal.Now.instant().toString({ smallestUnit: 'millisecond' }),
  };
}

/** A clock that stands still, for tests and for the demo studio. */
export function createFixedClock(date: PlainDate, time: PlainTime = '09:00' as PlainTime): Clock {
  return { today: () => date, time: () => time, instant: () => `${date}T${time}:00.000Z` };
}
