// Weekday, time and length of a weekly lesson as people type them.

import { isLessonLength, lessonLength } from '#contract';
import { err, isTime, ok, type PlainTime, type Result, type Weekday } from '#core';
import { toPlainWords } from './plain-words.ts';

/** Beginnings that tell the days apart in the five languages, without accents; from Monday. */
const dayStarts: readonly (readonly string[])[] = [
  ['mon', 'lun', 'seg', '2a', 'segunda'],
  ['tue', 'die', 'mar', 'ter', '3a'],
  ['wed', 'mit', 'mer', 'mie', 'qua', '4a'],
  ['thu', 'don', 'jeu', 'jue', 'qui', '5a'],
  ['fri', 'fre', 'ven', 'vie', 'sex', '6a'],
  ['sat', 'sam', 'sab', 'sonnabend'],
  ['sun', 'son', 'dim', 'dom'],
];
const shortDays: Readonly<Record<string, Weekday>> = {
  mo: 1,
  tu: 2,
  di: 2,
  we: 3,
  mi: 3,
  th: 4,
  do: 4,
  fr: 5,
  sa: 6,
  su: 7,
  so: 7,
};

/** `readWeekday('Donnerstag')` → 4 */
export function readWeekday(cell: string): Result<Weekday, string> {
  const word = toPlainWords(cell).replace(/\./g, '');
  const short = shortDays[word];
  if (short !== undefined) return ok(short);
  if (word.startsWith('sonnabend')) return ok(6);
  const at = dayStarts.findIndex((starts) => starts.some((s) => word.startsWith(s)));
  return at < 0
    ? err(`“${cell}” is no day of the week. Write it in full, such as Monday.`)
    : ok((at + 1) as Weekday);
}

/** `readTime('4.30 pm')` → `16:30`; `readTime('16h')` → `16:00` */
export function readTime(cell: string): Result<PlainTime, string> {
  const text = cell
    .trim()
    .toLowerCase()
    .replace(/\s*uhr$/, '');
  const found = /^(\d{1,2})(?:\s*[:.h]\s*(\d{2})?(?::00)?)?\s*([ap])?\.?\s*(m)?\.?$/.exec(text);
  const unreadable = err(`“${cell}” is no time of day. Write it as 16:30 or 4:30 pm.`);
  if (found === null || (found[3] === undefined) !== (found[4] === undefined)) return unreadable;
  let hour = Number(found[1]);
  const half = found[3];
  if (half !== undefined && (hour < 1 || hour > 12)) return unreadable;
  if (half === 'p' && hour < 12) hour += 12;
  if (half === 'a' && hour === 12) hour = 0;
  // Nobody teaches at four in the night: an hour alone before seven is too little to go on.
  if (half === undefined && hour >= 1 && hour < 7)
    return err(
      `“${cell}” may be morning or afternoon. Write it as ${hour + 12}:${found[2] ?? '00'} or with am or pm.`,
    );
  const time = `${String(hour).padStart(2, '0')}:${found[2] ?? '00'}`;
  return isTime(time) ? ok(time) : unreadable;
}

/** `readMinutes('45 min')` → 45 */
export function readMinutes(cell: string): Result<number, string> {
  const found = /^(\d{1,3})\s*(?:m|min|mins|minutes|minuten|minutos|')?\.?$/i.exec(cell.trim());
  const hours = /^(1|2)\s*(?:h|hour|hours|hr|hrs|std|stunde)\.?$/i.exec(cell.trim());
  const minutes = found !== null ? Number(found[1]) : hours !== null ? 60 * Number(hours[1]) : Number.NaN;
  return isLessonLength(minutes)
    ? ok(minutes)
    : err(
        `“${cell}” is no length of a lesson. Write minutes, from ${lessonLength.least} to ${lessonLength.most}.`,
      );
}

/** Whether a cell says that there is no time yet: `TBD`, `?` */
export const isOpen = (cell: string): boolean => /^(?:tb[acd]|n\/?a|open|none|[-–?]+)\.?$/i.test(cell.trim());

/** `partDayAndTime('Mon 3:30 PM')` → `Mon` and `3:30 PM`; null where a cell does not begin with one word and then a time. */
export function partDayAndTime(cell: string): { readonly day: string; readonly time: string } | null {
  const found = /^(\p{L}[\p{L}-]*\.?)[\s,@]+(?:(?:at|um|à|às|a las)\s+)?(\d.*)$/iu.exec(cell.trim());
  const [, day, time] = found ?? [];
  return day === undefined || time === undefined ? null : { day, time };
}

/** A time, or from when to when: `readTimeSpan('4:30-5:15 pm')` → 16:30 and 45 minutes. A half of the day said once is of both. */
export function readTimeSpan(
  cell: string,
): Result<{ readonly time: PlainTime; readonly minutes: number | null }, string> {
  const [from = '', to, ...more] = cell.split(/\s*(?:[-–]|\bto\b|\bbis\b)\s*/i);
  if (to === undefined || more.length > 0) {
    const time = readTime(cell);
    return time.ok ? ok({ time: time.value, minutes: null }) : time;
  }
  const half = /[ap]\.?m\.?$/i.exec(to)?.[0];
  const ends = readTime(to);
  // From 11:30 to 12:15 pm begins before noon.
  const begins = [from, ...(half === undefined ? [] : [`${from} ${half}`, `${from} am`])].map(readTime);
  const [plain] = begins;
  if (!ends.ok) return plain?.ok === false ? plain : ends;
  const fitting = begins
    .flatMap((time) =>
      time.ok ? [{ time: time.value, minutes: minutesBetween(time.value, ends.value) }] : [],
    )
    .filter(({ minutes }) => isLessonLength(minutes));
  const [nearest] = fitting.sort((a, b) => a.minutes - b.minutes);
  if (nearest !== undefined) return ok(nearest);
  return err(`“${cell}” is no time of a lesson. Write when it begins, as 16:30 or 4:30 pm.`);
}

const minutesBetween = (from: PlainTime, to: PlainTime): number => minuteOf(to) - minuteOf(from);
const minuteOf = (time: PlainTime): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
