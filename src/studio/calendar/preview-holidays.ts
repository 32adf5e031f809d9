// What a calendar file would bring in as holidays, before anything is saved.

import type { HolidayImportPreview } from '#contract';
import { addDays, daysBetween, isDate } from '#core';
import { formatDay } from '#planning';
import type { HolidayRecord } from '../record/records.ts';
import { longestSpan } from './lesson-dates.ts';
import { readCalendar } from './read-calendar.ts';

/** A single command takes at most so many holidays. */
const mostHolidays = 400;
const longestWindow = 1500;

/** The events from day `from` to day `to`; `known` marks those imported before. */
export function previewHolidays(
  request: { readonly text: string; readonly from: string; readonly to: string; readonly timeZone: string },
  known: readonly Pick<HolidayRecord, 'source'>[],
): HolidayImportPreview {
  const { text, from, to, timeZone } = request;
  const none = (fault: string): HolidayImportPreview => ({ holidays: [], faults: [fault] });
  if (!isDate(from) || !isDate(to))
    return none('Give the first and the last day to look at, written YYYY-MM-DD.');
  if (to < from) return none('The last day lies before the first. Swap them.');
  if (daysBetween(from, to) > longestWindow)
    return none(`Look at ${longestWindow} days at most, up to ${addDays(from, longestWindow)}.`);
  const read = readCalendar(text, { from, to, timeZone });
  if (!read.ok) return none(read.error.message);
  const faults = [...read.value.faults];
  const sources = new Set(known.map((h) => h.source).filter((s) => s !== ''));
  const fitting = read.value.entries.filter((entry) => {
    const days = daysBetween(entry.starts, entry.ends) + 1;
    if (days <= longestSpan) return true;
    faults.push(
      `“${entry.name}” is ${days} days long, so it was left out: a holiday has at most ${longestSpan}.`,
    );
    return false;
  });
  if (fitting.length > mostHolidays)
    faults.push(
      `There are ${fitting.length} events in these days; only the first ${mostHolidays} are shown. Is this a calendar of holidays?`,
    );
  if (fitting.length === 0 && faults.length === 0)
    faults.push(
      `The file has no events from ${formatDay(from)} ${from.slice(0, 4)} to ${formatDay(to)} ${to.slice(0, 4)}.`,
    );
  return {
    holidays: fitting.slice(0, mostHolidays).map((e) => ({ ...e, known: sources.has(e.source) })),
    faults,
  };
}
