// Calendar days and wall-clock times as plain ISO text, with Temporal behind one door: lessons happen on a day at a
// time in the teacher's zone, never at an instant. Text compares, sorts and keys maps without ceremony.

import { Temporal } from 'temporal-polyfill';
import type { Brand } from './id.ts';
import { modulo } from './modulo.ts';
import { err, ok, type Result } from './result.ts';

/** `YYYY-MM-DD`, a day that exists, from year 1900 to 2199. */
export type PlainDate = string & Brand<'PlainDate'>;
/** `HH:MM`, 24 hours. */
export type PlainTime = string & Brand<'PlainTime'>;
/** 1 Monday … 7 Sunday (ISO 8601). */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** The days of the week in order, from Monday. */
export const weekdays: readonly Weekday[] = [1, 2, 3, 4, 5, 6, 7];

export type DateUnreadable = { readonly kind: 'DateUnreadable'; readonly text: string };
export type TimeUnreadable = { readonly kind: 'TimeUnreadable'; readonly text: string };

/** Reads `YYYY-MM-DD`. `2026-02-30` and `26-2-3` are unreadable. */
export function parseDate(text: string): Result<PlainDate, DateUnreadable> {
  const found = /^(19|20|21)\d\d-(\d\d)-(\d\d)$/.exec(text);
  if (!found) return err({ kind: 'DateUnreadable', text });
  try {
    Temporal.PlainDate.from(text, { overflow: 'reject' });
    return ok(text as PlainDate);
  } catch {
    return err({ kind: 'DateUnreadable', text });
  }
}

/** Whether a text is a day that exists, written `YYYY-MM-DD`. */
export const isDate = (text: string): text is PlainDate => parseDate(text).ok;

/** Reads `HH:MM`. */
export function parseTime(text: string): Result<PlainTime, TimeUnreadable> {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(text)
    ? ok(text as PlainTime)
    : err({ kind: 'TimeUnreadable', text });
}

/** Whether a text is a time of day, written `HH:MM`. */
export const isTime = (text: string): text is PlainTime => parseTime(text).ok;

/** `addDays('2026-02-28', 1)` → `2026-03-01` */
export function addDays(date: PlainDate, days: number): PlainDate {
  return Temporal.PlainDate.from(date).add({ days }).toString() as PlainDate;
}

/** Whole days from one date to another; negative when `to` is earlier. `daysBetween('2026-02-28', '2026-03-01')` → 1 */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return dayNumber(to) - dayNumber(from);
}

/**
 * Days counted from 1 March of the year 0, in years that begin in March so that a leap day comes last (H. Hinnant,
 * "chrono-Compatible Low-Level Date Algorithms", days_from_civil; from memory). Planning counts days by the thousand.
 */
function dayNumber(date: PlainDate): number {
  const month = (Number(date.slice(5, 7)) + 9) % 12;
  const year = Number(date.slice(0, 4)) - (month >= 10 ? 1 : 0);
  const leapDays = Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  return 365 * year + leapDays + Math.floor((153 * month + 2) / 5) + Number(date.slice(8)) - 1;
}

/** ISO weekday, 1 Monday … 7 Sunday. `weekdayOf('2026-11-25')` → 3 */
export function weekdayOf(date: PlainDate): Weekday {
  return Temporal.PlainDate.from(date).dayOfWeek as Weekday;
}

/** ISO 8601 week. `isoWeekOf('2005-01-01')` → `{ year: 2004, week: 53 }` */
export function isoWeekOf(date: PlainDate): { readonly year: number; readonly week: number } {
  const day = Temporal.PlainDate.from(date);
  return { year: day.yearOfWeek ?? day.year, week: day.weekOfYear ?? 1 };
}

/** Whole years of age on a day, for someone of this birth date. */
export function ageOn(born: PlainDate, day: PlainDate): number {
  return Temporal.PlainDate.from(born).until(Temporal.PlainDate.from(day), { largestUnit: 'years' }).years;
}

/** Minutes after midnight. `minutesOf('09:30')` → 570 */
export function minutesOf(time: PlainTime): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}

/** The time of day some minutes later; past midnight it wraps. `addMinutes('09:30', 45)` → `10:15` */
export function addMinutes(time: PlainTime, minutes: number): PlainTime {
  const total = modulo(minutesOf(time) + minutes, 1440);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(Math.floor(total / 60))}:${two(total % 60)}` as PlainTime;
}
