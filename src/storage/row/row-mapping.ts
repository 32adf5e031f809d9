// Records to rows and back. A row is the list of values in column order; what cannot be kept exactly in both databases
// (text with NUL or half a surrogate pair, numbers that are not finite, fields unknown to the table) is refused loudly.

import { isDeepStrictEqual } from 'node:util';
import { assert, present } from '#core';
import type { TableName, Tables } from '#studio';
import type { Column, TableDescription } from '../schema/column.ts';

export type SqlValue = string | number | null;
/** Values in the order of the table's columns. */
export type Row = readonly SqlValue[];
/** What a driver gives: values by column name. */
export type NamedRow = Readonly<Record<string, SqlValue>>;

// PostgreSQL's text holds neither U+0000 nor a lone surrogate; SQLite would keep the first and spoil the second.
const unstorable = /\0|\p{Surrogate}/u;

/** Whether a text column can hold this text: no NUL character, no half surrogate pair. */
export const isStorable = (text: string): boolean => !unstorable.test(text);

/** The row of a record. Throws, naming table and field, when a value does not fit its column. */
export function recordToRow<T extends TableName>(table: TableDescription<T>, record: Tables[T]): Row {
  const values: Readonly<Record<string, unknown>> = { ...record };
  for (const field in values)
    assert(table.columnByField.has(field), `${table.table} has a column for the field ${field}`);
  return table.columns.map((column) => {
    const value = values[column.field];
    // A row that the journal or a file kept before the column came has nothing for it.
    return valueToSql(table.table, column, value === undefined && column.nullable ? null : value);
  });
}

/** The record of a row. */
export function rowToRecord<T extends TableName>(table: TableDescription<T>, row: Row): Tables[T] {
  const record: Record<string, unknown> = {};
  table.columns.forEach((column, i) => {
    record[column.field] = sqlToValue(column, row[i] ?? null);
  });
  return record as unknown as Tables[T]; // The columns were checked against the record type where they are described.
}

/** A driver's row as values in column order. */
export function namedToRow(table: TableDescription<TableName>, named: NamedRow): Row {
  return table.columns.map((column) => named[column.name] ?? null);
}

/** Whether two rows hold the same record; JSON is compared by what it says, not by the order of its keys. */
export function isSameRow(table: TableDescription<TableName>, a: Row, b: Row): boolean {
  return table.columns.every((column, i) => {
    const left = a[i] ?? null;
    const right = b[i] ?? null;
    if (left === right) return true;
    if (column.kind !== 'json' || left === null || right === null) return false;
    return isDeepStrictEqual(JSON.parse(String(left)), JSON.parse(String(right)));
  });
}

/** One value as it lies in its column. */
export function valueToSql(table: string, column: Column, value: unknown): SqlValue {
  const where = `${table}.${column.field}`;
  if (value === null) {
    assert(column.nullable, `${where} is not null`);
    return null;
  }
  switch (column.kind) {
    case 'text':
      assert(typeof value === 'string', `${where} is text`);
      assert(isStorable(value), `${where} has no NUL character and no half surrogate pair`);
      return value;
    case 'integer':
      assert(typeof value === 'number' && Number.isSafeInteger(value), `${where} is a whole number`);
      return value + 0; // −0 becomes 0: neither database keeps the difference in a whole number
    case 'real':
      assert(typeof value === 'number' && Number.isFinite(value), `${where} is a finite number`);
      return value + 0;
    case 'boolean':
      assert(typeof value === 'boolean', `${where} is true or false`);
      return value ? 1 : 0;
    case 'json':
      return present(JSON.stringify(value), `${where} as JSON`);
  }
}

function sqlToValue(column: Column, value: SqlValue): unknown {
  if (value === null) return null;
  if (column.kind === 'boolean') return value === 1;
  if (column.kind === 'json') return JSON.parse(String(value));
  return value;
}
