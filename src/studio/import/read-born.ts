// Dates of birth, years and ages as people type them. Where day and month could be either way round and nothing in the
// column settles it, we ask: a wrong birthday is worse than a question.

import { addDays, ageOn, err, isDate, ok, type PlainDate, type Result } from '#core';
import { toPlainWords } from './plain-words.ts';

export type DayOrder = 'dayFirst' | 'monthFirst';

/** A full date, or the year alone. */
export type Born = { readonly date: PlainDate } | { readonly year: number };

const oldest = 115;
const numbers = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/;

/** The order that the clear dates of a column show; null when none is clear, or they disagree. */
export function findDayOrder(cells: readonly string[]): DayOrder | null {
  const orders = new Set<DayOrder>();
  for (const cell of cells) {
    const found = numbers.exec(cell.trim());
    if (found === null || found[2] === '.') continue;
    const [a, b] = [Number(found[1]), Number(found[3])];
    if (a > 12 && b <= 12) orders.add('dayFirst');
    if (b > 12 && a <= 12) orders.add('monthFirst');
  }
  const [only] = orders;
  return orders.size === 1 && only !== undefined ? only : null;
}

/** Reads a date of birth. Errors are sentences. */
export function readBorn(cell: string, order: DayOrder | null, today: PlainDate): Result<Born, string> {
  const text = cell.trim().replace(/[ T]00:00(?::00(?:\.000)?)?Z?$/, '');
  const read = readDay(text, order);
  if (!read.ok) return read;
  if ('year' in read.value) return readYear(String(read.value.year), today);
  const { date } = read.value;
  if (date > addDays(today, 1)) return err(`${cell} lies in the future. Check the year.`);
  if (ageOn(date, today) > oldest)
    return err(`${cell} would make them ${ageOn(date, today)} years old. Check the year.`);
  return read;
}

function readDay(text: string, order: DayOrder | null): Result<Born, string> {
  if (/^\d{4}$/.test(text)) return ok({ year: Number(text) });
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (iso !== null) return toDate(text, iso[1], iso[2], iso[3]);
  const found = numbers.exec(text);
  if (found !== null) return readNumbers(text, found, order);
  const worded = readMonthWord(text);
  if (worded !== null) return worded;
  if (/^\d{5}$/.test(text))
    return err(
      `“${text}” looks like a spreadsheet's number for a day. Format the column as dates and export again.`,
    );
  return err(`“${text}” is no date we can read. Write it as 2015-04-30 or 30 April 2015.`);
}

function readNumbers(text: string, found: RegExpExecArray, order: DayOrder | null): Result<Born, string> {
  const [, a = '', sign, b = '', year = ''] = found;
  if (year.length === 2) return err(`“${text}” has only two figures for the year. Write all four.`);
  const [first, second] = [Number(a), Number(b)];
  // Dotted dates put the day first wherever they are in use.
  if (sign === '.' || first > 12 || first === second) return toDate(text, year, b, a);
  if (second > 12) return toDate(text, year, a, b);
  if (order !== null) return order === 'dayFirst' ? toDate(text, year, b, a) : toDate(text, year, a, b);
  const [dayFirst, monthFirst] = [wordDate(first, second, year), wordDate(second, first, year)];
  return err(
    `“${text}” may be ${dayFirst} or ${monthFirst}. Write the month in letters, or as ${year}-${two(second)}-${two(first)}.`,
  );
}

const months = 'January February March April May June July August September October November December'.split(
  ' ',
);
/** The first letters that tell months apart in the five languages, without accents. */
const monthStarts: readonly (readonly string[])[] = [
  ['jan', 'ene'],
  ['feb', 'fev'],
  ['mar', 'maer', 'mrz'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mayo'],
  ['jun', 'juin'],
  ['jul', 'juil'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'out'],
  ['nov'],
  ['dec', 'dez', 'dic'],
];

function readMonthWord(text: string): Result<Born, string> | null {
  const plain = toPlainWords(text)
    .replace(/[.,]/g, ' ')
    .replace(/\b(?:de|of|the)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const found =
    /^(\d{1,2})(?:st|nd|rd|th|er)? ?-?([a-z]{3,10})-? ?(\d{4})$/.exec(plain) ??
    swap(/^([a-z]{3,10}) (\d{1,2})(?:st|nd|rd|th)? (\d{4})$/.exec(plain));
  if (found === null) return null;
  const [, day, word = '', year] = found;
  const month = monthStarts.findIndex((starts) => starts.some((s) => word.startsWith(s)));
  return month < 0 ? null : toDate(text, year, String(month + 1), day);
}

const swap = (found: RegExpExecArray | null): readonly (string | undefined)[] | null =>
  found === null ? null : [found[0], found[2], found[1], found[3]];

function toDate(
  text: string,
  year: string | undefined,
  month: string | undefined,
  day: string | undefined,
): Result<Born, string> {
  const date = `${year}-${two(Number(month))}-${two(Number(day))}`;
  return isDate(date) ? ok({ date }) : err(`“${text}” is no day that exists. Check day and month.`);
}

/** Reads a year of birth. */
export function readYear(cell: string, today: PlainDate): Result<Born, string> {
  const year = Number(cell.trim());
  const now = Number(today.slice(0, 4));
  if (!/^\d{4}$/.test(cell.trim())) return err(`“${cell}” is no year. Write all four figures, such as 2015.`);
  if (year > now) return err(`The year ${year} lies in the future.`);
  if (now - year > oldest) return err(`The year ${year} would make them ${now - year} years old. Check it.`);
  return ok({ year });
}

/** From an age to the year of birth, to within a year. */
export function readAge(cell: string, today: PlainDate): Result<Born, string> {
  const found =
    /^(\d{1,3})(?:[.,]\d+)?(?:\s*(?:½|¼|¾))?\s*(?:y|yrs?|years?(?: old)?|jahre?|ans?|anos?|años?)?\.?$/i.exec(
      cell.trim(),
    );
  const age = Number(found?.[1]);
  if (found === null || age < 2 || age > oldest)
    return err(`“${cell}” is no age. Write whole years, from 2 to ${oldest}.`);
  return ok({ year: Number(today.slice(0, 4)) - age });
}

const two = (n: number) => String(n).padStart(2, '0');
const wordDate = (day: number, month: number, year: string) => `${day} ${months[month - 1]} ${year}`;
