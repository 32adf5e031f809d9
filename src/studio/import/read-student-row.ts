// One row of a spreadsheet as a student: every cell at fault is named, not only the first.

import type { StudentColumn, StudentImportPreview } from '#contract';
import type { PlainDate, Result, Weekday } from '#core';
import type { Stage } from '#planning';
import { listWords, toPlainWords } from './plain-words.ts';
import { type Born, type DayOrder, readAge, readBorn, readYear } from './read-born.ts';
import { readInstruments } from './read-instruments.ts';
import { isOpen, partDayAndTime, readMinutes, readTime, readTimeSpan, readWeekday } from './read-slot.ts';
import { stageShades, stageWords } from './stage-words.data.ts';

export interface StudentCells {
  /** The text of a column, '' when it is empty or not in the file. */
  get(column: StudentColumn): string;
  has(column: StudentColumn): boolean;
}

export interface RowContext {
  readonly today: PlainDate;
  readonly dayOrder: DayOrder | null;
}

type PreviewRow = StudentImportPreview['rows'][number];
type ReadStudent = NonNullable<PreviewRow['student']>;
type RowFault = PreviewRow['faults'][number];

const usualMinutes = 30;
const longest = { name: 120, short: 60, email: 200, note: 20_000 };

/** The student of a row, or what is wrong with it. */
export function readStudentRow(
  cells: StudentCells,
  { today, dayOrder }: RowContext,
): { readonly student: ReadStudent | null; readonly faults: readonly RowFault[] } {
  const faults: RowFault[] = [];
  /** Reads a cell that is not empty; a fault is kept and the value left out. */
  const take = <T>(column: StudentColumn, read: (cell: string) => Result<T, string>): T | null => {
    const cell = cells.get(column);
    if (cell === '') return null;
    const value = read(cell);
    if (value.ok) return value.value;
    faults.push({ column, message: value.error });
    return null;
  };

  const name = readName(cells, faults);
  const born = readBirth(take, today, dayOrder, faults);
  const year = born === null ? null : 'date' in born ? Number(born.date.slice(0, 4)) : born.year;
  const age = year === null ? null : Number(today.slice(0, 4)) - year;
  const stage = take('stage', readStage) ?? 'beginner';
  const instruments = take('instrument', (cell) => readInstruments(cell, age)) ?? [];
  const contacts = readContacts(cells, faults);
  const note = cells.get('note');
  if (note.length > longest.note)
    faults.push({ column: 'note', message: 'The note is longer than 20,000 characters.' });
  const slot = readSlot(cells, take, faults);
  if (faults.length > 0) return { student: null, faults };
  return {
    student: {
      name,
      born: born !== null && 'date' in born ? born.date : null,
      birthYear: born !== null && 'year' in born ? born.year : null,
      instruments: instruments.map((instrument) => ({ instrument, stage })),
      contacts,
      note,
      slot,
    },
    faults,
  };
}

type Take = <T>(column: StudentColumn, read: (cell: string) => Result<T, string>) => T | null;

function readName(cells: StudentCells, faults: RowFault[]): string {
  const name = cells.get('name').replace(/\s+/g, ' ').trim();
  if (!cells.has('name')) faults.push({ column: 'name', message: 'Choose the column that holds the name.' });
  else if (name === '')
    faults.push({ column: 'name', message: 'The name is missing. Write it, or leave the row out.' });
  else if (name.length > longest.name)
    faults.push({ column: 'name', message: `The name is longer than ${longest.name} characters.` });
  return name;
}

/** The most exact of date, year and age; two that contradict each other are a fault. */
function readBirth(take: Take, today: PlainDate, order: DayOrder | null, faults: RowFault[]): Born | null {
  const date = take('born', (cell) => readBorn(cell, order, today));
  const year = take('birthYear', (cell) => readYear(cell, today));
  const age = take('age', (cell) => readAge(cell, today));
  const exact = date ?? year ?? age;
  const yearOf = (born: Born) => ('date' in born ? Number(born.date.slice(0, 4)) : born.year);
  if (date !== null && year !== null && yearOf(date) !== yearOf(year))
    faults.push({
      column: 'birthYear',
      message: `The year ${yearOf(year)} does not agree with the date of birth.`,
    });
  // An age may be from before or after this year's birthday, or a year old.
  if (exact !== null && age !== null && Math.abs(yearOf(exact) - yearOf(age)) > 2)
    faults.push({
      column: 'age',
      message: `The age does not agree with the year of birth ${yearOf(exact)}.`,
    });
  return exact;
}

const stageByWord = listWords(stageWords);

const shades = new Set(stageShades.split(' | '));

function readStage(cell: string): Result<Stage, string> {
  const plain = toPlainWords(cell).replace(/\./g, '');
  const [shade = '', ...rest] = plain.split(/[\s-]+/);
  const stage = stageByWord.get(plain) ?? (shades.has(shade) ? stageByWord.get(rest.join(' ')) : undefined);
  return stage === undefined
    ? {
        ok: false,
        error: `“${cell}” is no stage we know. Write beginner, elementary, intermediate or advanced, or leave it empty.`,
      }
    : { ok: true, value: stage };
}

function readContacts(cells: StudentCells, faults: RowFault[]): ReadStudent['contacts'] {
  const contact = {
    name: cells.get('contactName').slice(0, longest.name),
    relation: cells.get('contactRelation').slice(0, longest.short),
    phone: cells.get('phone'),
    email: cells.get('email'),
  };
  if (contact.email !== '' && !/^[^\s@,;]+@[^\s@,;]+\.[^\s@,;]+$/.test(contact.email))
    faults.push({
      column: 'email',
      message: `“${contact.email}” is no e-mail address. Mend it or leave it empty.`,
    });
  if (contact.email.length > longest.email)
    faults.push({ column: 'email', message: 'The e-mail address is too long.' });
  if (contact.phone !== '' && (!/\d/.test(contact.phone) || contact.phone.length > longest.short))
    faults.push({
      column: 'phone',
      message: `“${contact.phone}” is no phone number. Mend it or leave it empty.`,
    });
  return Object.values(contact).every((text) => text === '') ? [] : [contact];
}

function readSlot(cells: StudentCells, take: Take, faults: RowFault[]): ReadStudent['slot'] {
  const said = { weekday: cells.get('weekday'), time: cells.get('time') };
  if (said.time === '' && isOpen(said.weekday)) return null;
  // Of a cell with both, what is said of its time stands at the cell too.
  const both = said.time === '' ? partDayAndTime(said.weekday) : null;
  const weekday: Weekday | null = take('weekday', (cell) => readWeekday(both?.day ?? cell));
  const span = both && weekday !== null ? take('weekday', () => readTimeSpan(both.time)) : null;
  const time = both === null ? take('time', readTime) : (span?.time ?? null);
  const minutes = take('minutes', readMinutes) ?? span?.minutes ?? usualMinutes;
  const [hasDay, hasTime] = [said.weekday !== '', said.time !== '' || both !== null];
  const isUnreadDay = hasDay && weekday === null;
  if (hasDay !== hasTime && !isUnreadDay)
    faults.push({
      column: hasDay ? 'time' : 'weekday',
      message: hasDay
        ? 'The weekday has no time. Write one, or leave both empty.'
        : 'The time has no weekday. Write one, or leave both empty.',
    });
  if (weekday === null || time === null) return null;
  return { weekday, time, minutes };
}
