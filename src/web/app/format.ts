// Days, times and numbers as the studio's locale writes them. A PlainDate goes through Intl as midnight UTC, so no
// time zone of the browser can move it.

import type { PlainDate, PlainTime, Weekday } from '#core';

export type DayForm = 'full' | 'long' | 'short' | 'weekday' | 'day' | 'month' | 'monthName';

const dayForms: Readonly<Record<DayForm, Intl.DateTimeFormatOptions>> = {
  /** Wednesday, 25 November 2026 */
  full: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  /** 25 November 2026 */
  long: { day: 'numeric', month: 'long', year: 'numeric' },
  /** Wed 25 Nov */
  short: { weekday: 'short', day: 'numeric', month: 'short' },
  /** Wednesday */
  weekday: { weekday: 'long' },
  /** 25 Nov */
  day: { day: 'numeric', month: 'short' },
  /** November 2026 */
  month: { month: 'long', year: 'numeric' },
  /** Nov */
  monthName: { month: 'short' },
};

/** Makes one for each locale and options, once: making it takes fifty times as long as using it. */
function keepEach<Options, Formatter>(make: (locale: string, options: Options) => Formatter) {
  const kept = new Map<string, Formatter>();
  return (locale: string, options: Options): Formatter => {
    const key = `${locale} ${JSON.stringify(options)}`;
    const formatter = kept.get(key) ?? make(locale, options);
    kept.set(key, formatter);
    return formatter;
  };
}

const dates = keepEach(
  (locale, options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(locale, { timeZone: 'UTC', ...options }),
);
const numbers = keepEach(
  (locale, options: Intl.NumberFormatOptions) => new Intl.NumberFormat(locale, options),
);

const utc = (date: PlainDate, time = '00:00') => new Date(`${date}T${time}:00Z`);

/** A day in words. `formatDay('2026-11-25', 'en-GB', 'long')` → `25 November 2026` */
export function formatDay(date: PlainDate, locale: string, form: DayForm = 'short'): string {
  return dates(locale, dayForms[form]).format(utc(date));
}

/** Two days as a stretch, with what they share said once. `('2026-12-19', '2027-01-03', 'en-GB')` → `19 December 2026 – 3 January 2027` */
export function formatDays(from: PlainDate, to: PlainDate, locale: string): string {
  if (from === to) return formatDay(from, locale, 'long');
  return dates(locale, dayForms.long).formatRange(utc(from), utc(to));
}

/** A time of day. `formatTime('16:30', 'en-GB')` → `16:30`; in `en-US` `4:30 PM` */
export function formatTime(time: PlainTime, locale: string): string {
  const day = '2000-01-01' as PlainDate;
  return dates(locale, { hour: 'numeric', minute: '2-digit' }).format(utc(day, time));
}

/** The name of a weekday, 1 Monday … 7 Sunday. `formatWeekday(1, 'en-GB')` → `Monday` */
export function formatWeekday(weekday: Weekday, locale: string, form: 'long' | 'short' = 'long'): string {
  // 1 January 2001 was a Monday.
  const day = `2001-01-0${weekday}` as PlainDate;
  return dates(locale, { weekday: form }).format(utc(day));
}

/** Minutes as they are said. `formatMinutes(45, 'en-GB')` → `45 min` */
export function formatMinutes(minutes: number, locale: string): string {
  const number = numbers(locale, { style: 'unit', unit: 'minute', unitDisplay: 'short' });
  return number.format(minutes).replace('mins', 'min');
}

/** A longer stretch of minutes, from two hours on in hours. `formatStretch(375, 'en-GB')` → `6 hr 15 min` */
export function formatStretch(minutes: number, locale: string): string {
  if (minutes < 120) return formatMinutes(minutes, locale);
  const number = numbers(locale, { style: 'unit', unit: 'hour', unitDisplay: 'short' });
  const hours = number.format(Math.floor(minutes / 60)).replace('hrs', 'hr');
  return minutes % 60 === 0 ? hours : `${hours} ${formatMinutes(minutes % 60, locale)}`;
}

/** A share 0..1 in per cent. `formatShare(0.78, 'en-GB')` → `78%` */
export function formatShare(share: number, locale: string): string {
  return numbers(locale, { style: 'percent', maximumFractionDigits: 0 }).format(share);
}

/** A moment (ISO instant) on the studio's own clock. `formatMoment('2026-11-25T09:30:00Z', 'en-GB', 'Europe/Lisbon')` → `25 Nov, 09:30` */
export function formatMoment(instant: string, locale: string, timeZone: string): string {
  return dates(locale, {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    timeZone,
  }).format(new Date(instant));
}
