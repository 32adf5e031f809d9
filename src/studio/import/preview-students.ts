// What a spreadsheet of students would bring in, row by row, before anything is saved: each row either makes a student
// or says in words what is wrong with it.

import { type Fault, type StudentColumn, type StudentImportPreview, studentColumns } from '#contract';
import { err, ok, type PlainDate, type Result } from '#core';
import type { StudentRecord } from '../record/records.ts';
import { columnWords } from './column-words.data.ts';
import { findSiblings, type KnownStudent } from './find-siblings.ts';
import { listWords, toPlainWords } from './plain-words.ts';
import { findDayOrder } from './read-born.ts';
import { type CsvRow, readCsv } from './read-csv.ts';
import { readStudentRow, type StudentCells } from './read-student-row.ts';

type Mapping = readonly (StudentColumn | null)[];
type PreviewRow = StudentImportPreview['rows'][number];

/** One command adds at most so many. */
const mostStudents = 500;
const mostColumns = 100;

/**
 * Reads the file. `mapping` says what each column is taken as; without it the headings are recognised. `existing` are the
 * studio's students, to find twins by name, and siblings.
 */
export function previewStudents(
  request: { readonly text: string; readonly mapping?: Mapping | undefined; readonly today: PlainDate },
  existing: readonly KnownStudent[],
): Result<StudentImportPreview, Fault> {
  const read = readCsv(request.text);
  if (!read.ok) return err({ kind: 'Invalid', field: 'text', message: read.error.message });
  const [heading, ...body] = read.value;
  if (heading === undefined || body.length === 0)
    return err({
      kind: 'Invalid',
      field: 'text',
      message:
        'The file has only one line. The first line must hold the headings, and each line after it a student.',
    });
  if (heading.cells.length > mostColumns)
    return err({ kind: 'Invalid', field: 'text', message: `The file has more than ${mostColumns} columns.` });
  if (body.length > mostStudents)
    return err({
      kind: 'TooLarge',
      field: 'text',
      message: `The file has ${body.length} students; at most ${mostStudents} are taken at a time. Split it.`,
    });
  const header = trimEnd(heading.cells).map((cell) => cell.trim());
  const wanted = request.mapping ?? recognise(header);
  const mapping = header.map((_, at) => wanted[at] ?? null);
  const columns = {
    header,
    mapping,
    lastNames: header.map((name) => keyByWord.get(toHeading(name)) === 'name:last'),
  };
  const bornCells = body.flatMap((row) =>
    mapping.flatMap((c, at) => (c === 'born' ? [row.cells[at] ?? ''] : [])),
  );
  const context = { today: request.today, dayOrder: findDayOrder(bornCells) };
  const rows = body.map((row) => previewRow(row, columns, context));
  const marked = markTwins(rows, existing);
  const family = mapping.indexOf('family');
  const said = marked.map(({ cells }) => (family < 0 ? '' : (cells[family] ?? '')));
  return ok({ header, mapping, rows: marked, siblings: findSiblings(marked, said, existing) });
}

const keyByWord = listWords(columnWords);

/** `Parent / Guardian` and `Day & time` are the same headings as `parent/guardian` and `day and time`. */
const toHeading = (cell: string): string =>
  toPlainWords(cell)
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s*&\s*/g, ' and ');

/** What each heading is taken as: the first column of a kind wins, but a first and a last name go together. */
function recognise(header: readonly string[]): Mapping {
  const taken = new Set<string>();
  const keys = header.map((cell) => keyByWord.get(toHeading(cell)) ?? null);
  const hasFull = keys.includes('name');
  return keys.map((key) => {
    if (key === null || taken.has(key)) return null;
    taken.add(key);
    if (key === 'name:first' || key === 'name:last')
      return hasFull && key === 'name:last' ? 'name' : hasFull ? null : 'name';
    return key;
  });
}

interface Columns {
  readonly header: readonly string[];
  readonly mapping: Mapping;
  readonly lastNames: readonly boolean[];
}

function previewRow(
  row: CsvRow,
  { header, mapping, lastNames }: Columns,
  context: Parameters<typeof readStudentRow>[1],
): PreviewRow {
  const cells = header.map((_, at) => toText(row.cells[at] ?? ''));
  const tooMany = trimEnd(row.cells).length > header.length;
  const byColumn = new Map<StudentColumn, string>();
  for (const column of studentColumns) {
    const places = mapping.flatMap((c, at) => (c === column ? [at] : []));
    if (column === 'name') places.sort((a, b) => Number(lastNames[a]) - Number(lastNames[b]));
    byColumn.set(
      column,
      places
        .map((at) => cells[at] ?? '')
        .filter((text) => text !== '')
        .join(column === 'note' ? '\n' : ' '),
    );
  }
  const student: StudentCells = {
    get: (column) => byColumn.get(column) ?? '',
    has: (column) => mapping.includes(column),
  };
  const read = readStudentRow(student, context);
  const faults = tooMany
    ? [
        {
          column: '',
          message: `This row has ${trimEnd(row.cells).length} cells where the headings are ${header.length}. Put text that holds the delimiter in quotation marks.`,
        },
        ...read.faults,
      ]
    : read.faults;
  return { line: row.line, cells, student: faults.length > 0 ? null : read.student, faults, twin: null };
}

/** A cell as text. Spreadsheets put an apostrophe before what could be taken for a formula; it is no part of the text. */
const toText = (cell: string) => cell.trim().replace(/^'(?=[=+\-@\t\r])/, '');

function trimEnd(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex((cell) => cell.trim() !== '');
  return cells.slice(0, last + 1);
}

/** Marks who is in the studio already; the same name twice in the file is a fault of the later row. */
function markTwins(
  rows: readonly PreviewRow[],
  existing: readonly Pick<StudentRecord, 'id' | 'name'>[],
): readonly PreviewRow[] {
  const idByName = new Map(existing.map((s) => [toPlainWords(s.name), s.id]));
  const lineByName = new Map<string, number>();
  return rows.map((row) => {
    if (row.student === null) return row;
    const name = toPlainWords(row.student.name);
    const earlier = lineByName.get(name);
    if (earlier !== undefined)
      return {
        ...row,
        student: null,
        faults: [
          {
            column: 'name',
            message: `${row.student.name} stands in row ${earlier} already. Leave one out, or add something to tell them apart.`,
          },
        ],
      };
    lineByName.set(name, row.line);
    return { ...row, twin: idByName.get(name) ?? null };
  });
}
