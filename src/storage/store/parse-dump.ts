// Reads a studio's exported file back into rows, trusting nothing in it: every field of every row has the kind its
// column wants, every id points at a row that is there, and unit documents are unit documents.

import {
  err,
  type Fields,
  formatJsonFault,
  isFields,
  type JsonFault,
  ok,
  parseJson,
  type Result,
} from '#core';
import { formatUnitFault, parseUnitFile } from '#planning';
import type { StudioDump, TableName } from '#studio';
import { isStorable } from '../row/row-mapping.ts';
import type { Column } from '../schema/column.ts';
import { tableNames, tables } from '../schema/tables.ts';
import { fitsForm } from './row-forms.ts';

const mostFaults = 5;

/** Tables that files of earlier releases do not have. */
const emptyNewer: Fields = { consent: [], sound: [], soundData: [], take: [], lessonMaterial: [] };

/** The dump in a file's text; the error is a sentence or more on what is wrong and where. */
export function parseDump(text: string): Result<StudioDump, string> {
  const parsed = parseJson(text);
  if (!parsed.ok) return err(explainNoJson(text, parsed.error));
  const { value } = parsed;
  if (!isFields(value) || value['format'] !== 'levare-studio/1' || !isFields(value['tables']))
    return err(
      'This is not an exported studio: it lacks "format": "levare-studio/1". Choose a file that Levare exported.',
    );
  const rowsByTable: Fields = { ...emptyNewer, ...value['tables'] };
  const faults: string[] = [];
  const idsByTable = new Map<TableName, ReadonlySet<unknown>>();
  for (const table of tableNames) idsByTable.set(table, idsOf(table, rowsByTable[table], faults));
  for (const table of tableNames)
    for (const [i, row] of listOf(rowsByTable[table]).entries())
      if (faults.length < mostFaults) faults.push(...rowFaults(table, i, row, idsByTable));
  faults.push(...changeFaults(value['changes']));
  if (faults.length > 0)
    return err(
      `This exported studio is damaged, and nothing was read: ${faults.slice(0, mostFaults).join(' ')}`,
    );
  return ok({ ...value, tables: rowsByTable } as unknown as StudioDump); // every table, row, field and change was checked above
}

/** What is wrong with a file's text that is no JSON. */
function explainNoJson(text: string, fault: JsonFault): string {
  const begin = text.trimStart(); // of a mark of byte order too
  if (begin === '') return 'This file is empty. Choose a file that Levare exported.';
  if (!begin.startsWith('{'))
    return 'This is not an exported studio: it does not begin with {. Choose a file that Levare exported.';
  return fault.atEnd
    ? `This file ends too early, at line ${fault.line}, column ${fault.column}, and nothing was read. Copy the whole file again, or export the studio again.`
    : `This file is damaged, and nothing was read: ${formatJsonFault('its text', fault)} Or export the studio again.`;
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

function idsOf(table: TableName, rows: unknown, faults: string[]): ReadonlySet<unknown> {
  if (!Array.isArray(rows)) faults.push(`The table ${table} is missing.`);
  const ids = listOf(rows).map((row) => (isFields(row) ? row['id'] : undefined));
  const unique = new Set(ids);
  if (unique.size < ids.length) faults.push(`The table ${table} holds two rows with one id.`);
  return unique;
}

/** Fields that hold ids of several students. */
const studentLists = [
  ['group', 'members'],
  ['lesson', 'absent'],
] as const;

function rowFaults(
  table: TableName,
  index: number,
  row: unknown,
  idsByTable: ReadonlyMap<TableName, ReadonlySet<unknown>>,
): readonly string[] {
  const where = `${table}[${index}]`;
  if (!isFields(row)) return [`${where} is not a row.`];
  const fault = fieldFault(table, where, row);
  if (fault !== null) return [fault];
  for (const { field, kind } of tables[table].columns)
    if (kind === 'text' && !pointsSomewhere(field, row[field] ?? null, idsByTable))
      return [`${where}.${field} names ${String(row[field])}, which is not in the file.`];
  for (const [of, field] of studentLists) {
    const lost =
      table === of ? listOf(row[field]).find((id) => !idsByTable.get('student')?.has(id)) : undefined;
    if (lost !== undefined) return [`${where}.${field} names ${String(lost)}, which is not in the file.`];
  }
  if (table === 'course' && ((row['student'] ?? null) === null) === ((row['group'] ?? null) === null))
    return [`${where} is for one student or one group, and the file says otherwise.`];
  return documentFaults(where, row['document']);
}

/** The first field that does not hold what this table's rows hold, as a sentence. */
function fieldFault(table: TableName, where: string, row: Fields): string | null {
  const { columns, columnByField } = tables[table];
  const stranger = Object.keys(row).find((field) => !columnByField.has(field));
  if (stranger !== undefined) return `${where} has a field ${stranger} that this version does not know.`;
  for (const column of columns) {
    const held = row[column.field] ?? null; // a column that came later is absent in an older file
    if (!fitsColumn(column, held) || (held !== null && !fitsForm(table, column.field, held)))
      return `${where}.${column.field} does not hold what it should.`;
  }
  return null;
}

function fitsColumn({ kind, nullable }: Column, value: unknown): boolean {
  if (value === null) return nullable;
  switch (kind) {
    case 'text':
      return typeof value === 'string' && isStorable(value);
    case 'integer':
      return Number.isSafeInteger(value);
    case 'real':
      return typeof value === 'number' && Number.isFinite(value);
    case 'boolean':
      return typeof value === 'boolean';
    case 'json':
      return typeof value === 'object';
  }
}

/** A field named like a table holds an id of that table. */
function pointsSomewhere(
  field: string,
  value: unknown,
  idsByTable: ReadonlyMap<string, ReadonlySet<unknown>>,
): boolean {
  const ids = idsByTable.get(field);
  return ids === undefined || value === null || ids.has(value);
}

function documentFaults(where: string, document: unknown): readonly string[] {
  if (document === undefined) return [];
  const parsed = parseUnitFile({ unit: document, skills: [] });
  return parsed.ok
    ? []
    : parsed.error.slice(0, 1).map((fault) => `${where}.document: ${formatUnitFault(fault)}`);
}

/** What is wrong with the journal: its first fault. */
function changeFaults(changes: unknown): readonly string[] {
  if (!Array.isArray(changes) || !changes.every(isChange)) return ['Its list of changes cannot be read.'];
  const ids = new Set(changes.map((change) => change['id']));
  if (ids.size < changes.length) return ['Its list of changes holds one change twice.'];
  const lost = changes.find(({ undoneBy }) => undoneBy !== null && !ids.has(undoneBy));
  return lost === undefined ? [] : [`${lost['id']} was undone by a change that is not in the file.`];
}

function isChange(change: unknown): change is Fields {
  if (!isFields(change) || !Array.isArray(change['rows']) || change['undoneBy'] === undefined) return false;
  const texts = ['id', 'at', 'label', 'type'].map((field) => change[field]);
  return texts.every(isStorableText) && change['rows'].every(isChangedRow);
}

function isChangedRow(row: unknown): boolean {
  if (!isFields(row) || !isStorableText(row['rowId'])) return false;
  const table = tableNames.find((name) => name === row['table']);
  return table !== undefined && ['before', 'after'].every((side) => isImage(table, row[side]));
}

/** Undo puts it back into the table as it is. */
const isImage = (table: TableName, image: unknown): boolean =>
  image === null || (isFields(image) && fieldFault(table, table, image) === null);

const isStorableText = (value: unknown): boolean => typeof value === 'string' && isStorable(value);
