// Wall-clock times of named zones and the instants they stand for, by the IANA time zone database.

import { Temporal } from 'temporal-polyfill';

/** Whether this machine knows an IANA time zone of this name. `Europe/Lisbon`, not `Lisbon` */
export function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/**
 * Seconds since 1970-01-01T00:00:00Z of a wall-clock time (`YYYY-MM-DDTHH:MM:SS`) in a zone. A time that comes twice is the
 * first; one that is skipped counts by the offset before the gap (RFC 5545, 3.3.5).
 * `secondsAt('1970-01-01T09:00:00', 'Asia/Tokyo')` → 0
 */
export function secondsAt(wall: string, timeZone: string): number {
  const zoned = Temporal.PlainDateTime.from(wall).toZonedDateTime(timeZone, { disambiguation: 'compatible' });
  return Math.floor(zoned.epochMilliseconds / 1000);
}

/** The wall-clock time (`YYYY-MM-DDTHH:MM:SS`) in a zone at a number of seconds since 1970-01-01T00:00:00Z. `wallAt(0, 'Asia/Tokyo')` → `1970-01-01T09:00:00` */
export function wallAt(seconds: number, timeZone: string): string {
  return Temporal.Instant.fromEpochMilliseconds(seconds * 1000)
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'second' });
}
