// What a previewed file asks for, row by row, and how a mended cell goes back into the text that is previewed again.

import type { CommandOf, SiblingsFound, StudentImportPreview } from '#contract';
import type { Id, PlainDate } from '#core';
import { courseToOpen, type MintId, newCourseDraft } from './student-draft.ts';

export type PreviewRow = StudentImportPreview['rows'][number];

/** A cell as CSV (RFC 4180, section 2, rules 5 to 7). `csvCell('a "b"')` → `"a ""b"""` */
export function csvCell(cell: string): string {
  return /[",\r\n]/.test(cell) || cell !== cell.trim() ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Header and rows as CSV text with commas. */
export function rowsToCsv(header: readonly string[], rows: readonly (readonly string[])[]): string {
  return [header, ...rows].map((row) => row.map(csvCell).join(',')).join('\r\n');
}

/** The text with one cell written anew; `row` and `column` count from 0. */
export function mendCell(preview: StudentImportPreview, row: number, column: number, text: string): string {
  const cells = preview.rows.map((r, at) => {
    const padded = preview.header.map((_, c) => r.cells[c] ?? '');
    return at === row ? padded.with(column, text) : padded;
  });
  return rowsToCsv(preview.header, cells);
}

/** `turnName('Löwe, Marie')` → `'Marie Löwe'`; null for a name without exactly one comma between words. */
export function turnName(name: string): string | null {
  const [last = '', first = '', ...more] = name.split(',').map((part) => part.trim());
  return last === '' || first === '' || more.length > 0 ? null : `${first} ${last}`;
}

/** Names that stood family name first: as they were and as they are turned, by row. */
export interface TurnedNames {
  readonly column: number;
  readonly names: readonly { readonly as: string; readonly turned: string }[];
}

/**
 * The names with those turned that stand with their family name first, where most of them do; null where they do not. One
 * name alone, or half of them, may be anything: “King, Ida and Ted”.
 */
export function findTurnedNames(preview: StudentImportPreview): TurnedNames | null {
  const column = preview.mapping.indexOf('name');
  if (column < 0) return null;
  const names = preview.rows.map(({ cells }) => {
    const as = cells[column] ?? '';
    return { as, turned: turnName(as) ?? as };
  });
  const written = names.filter(({ as }) => as.trim() !== '');
  const turned = written.filter(({ as, turned }) => as !== turned);
  return turned.length > written.length / 2 ? { column, names } : null;
}

/** The text with the names turned, or turned back; a name written anew meanwhile stays as it is. */
export function turnNames(
  preview: StudentImportPreview,
  { column, names }: TurnedNames,
  way: 'turned' | 'as',
): string {
  const other = way === 'turned' ? 'as' : 'turned';
  const cells = preview.rows.map((row, at) => {
    const padded = preview.header.map((_, c) => row.cells[c] ?? '');
    const name = names[at];
    return name && padded[column] === name[other] ? padded.with(column, name[way]) : padded;
  });
  return rowsToCsv(preview.header, cells);
}

/** Whether a row can be taken. */
export const isReady = (row: PreviewRow): boolean => row.student !== null && row.faults.length === 0;

/** Whether a row is taken unless the teacher says otherwise: ready, and nobody of this name is here. */
export const isTakenAtFirst = (row: PreviewRow): boolean => isReady(row) && row.twin === null;

/** Whether a row opens a course: it names an instrument and a time in the week. */
export const opensCourse = (row: PreviewRow): boolean =>
  (row.student?.slot ?? null) !== null && (row.student?.instruments.length ?? 0) > 0;

/** Who may be siblings, of those that would be taken and those who are here already. */
export interface FoundSiblings extends SiblingsFound {
  readonly key: string;
  readonly names: readonly string[];
}

/** The sets found in which two or more are left when only these rows are taken. */
export function listSiblings(
  { siblings }: Pick<StudentImportPreview, 'siblings'>,
  taken: readonly PreviewRow[],
): readonly FoundSiblings[] {
  return siblings.flatMap((found) => {
    const rows = taken.filter(({ line }) => found.lines.includes(line));
    const names = [
      ...found.here.map(({ name }) => name),
      ...rows.flatMap(({ student }) => student?.name ?? []),
    ];
    if (rows.length === 0 || names.length < 2) return [];
    return [{ ...found, names, key: [...found.lines, ...found.here.map(({ id }) => id)].join(' ') }];
  });
}

/** What the file itself says stands unless the teacher says otherwise; what is guessed does not. */
export const isSiblingsAtFirst = ({ why }: SiblingsFound): boolean => why === 'column';

export interface ImportCommands {
  readonly add: CommandOf<'student.addMany'>;
  readonly siblings: readonly CommandOf<'family.join'>[];
  readonly courses: readonly CommandOf<'course.open'>[];
}

/** The commands that these rows ask for, with those among them made siblings; null when there are none to take. */
export function rowsToCommands(
  rows: readonly PreviewRow[],
  siblings: readonly SiblingsFound[],
  today: PlainDate,
  mint: MintId,
): ImportCommands | null {
  const students: CommandOf<'student.addMany'>['students'] = [];
  const courses: CommandOf<'course.open'>[] = [];
  const idByLine = new Map<number, Id<'student'>>();
  for (const { line, student } of rows) {
    if (student === null) continue;
    const id = mint('student');
    idByLine.set(line, id);
    students.push({
      id,
      name: student.name,
      born: student.born,
      birthYear: student.born === null ? student.birthYear : null,
      instruments: student.instruments.map((i) => ({ ...i })),
      family: null,
      contacts: student.contacts.map((c) => ({ ...c })),
      note: student.note,
      since: today,
    });
    const plays = student.instruments[0];
    if (!student.slot || !plays) continue;
    const course = {
      ...newCourseDraft(true, today),
      weekday: `${student.slot.weekday}` as const,
      time: student.slot.time,
      minutes: String(student.slot.minutes),
    };
    courses.push(courseToOpen(course, { student: id, group: null }, plays, today, mint));
  }
  const joins = siblings.flatMap(({ lines, here, family }): CommandOf<'family.join'>[] => {
    const added = lines.flatMap((line) => idByLine.get(line) ?? []);
    const all = [...here.map(({ id }) => id), ...added];
    return added.length === 0 || all.length < 2
      ? []
      : [{ type: 'family.join', family: family ?? mint('family'), students: all }];
  });
  return students.length === 0
    ? null
    : { add: { type: 'student.addMany', students }, siblings: joins, courses };
}
