// The journal: one row for each change, and for each row it touched what was there before and after, as JSON. Undo,
// once-only delivery and the change list read it.

import type { ChangedRow, ChangeId, ChangeRecord, TableName } from '#studio';
import type { NamedRow, SqlValue } from '../row/row-mapping.ts';
import { cutIntoBatches, type Run, type Statements } from './statements.ts';

const changedRowColumns = ['change', 'position', 'table_name', 'row_id', 'before', 'after'];

/** Writes a change and its rows at the journal's end. */
export async function writeChange(
  run: Run,
  statements: Statements,
  change: ChangeRecord,
  rows: readonly ChangedRow[],
): Promise<void> {
  await run(statements.insertChange, [
    change.id,
    change.at,
    change.label,
    change.type,
    JSON.stringify(change.reply ?? null),
    change.undoneBy,
  ]);
  let position = 0;
  for (const batch of cutIntoBatches(rows)) {
    const values: SqlValue[] = [];
    for (const row of batch)
      values.push(change.id, position++, row.table, row.rowId, imageToSql(row.before), imageToSql(row.after));
    await run(statements.insert('changed_row', changedRowColumns, batch.length), values);
  }
}

/** The change that a row of the journal holds. */
export function changeRecordOf(row: NamedRow): ChangeRecord {
  return {
    id: String(row['id']) as ChangeId, // written by writeChange
    at: String(row['at']),
    label: String(row['label']),
    type: String(row['type']),
    reply: JSON.parse(String(row['reply'])),
    undoneBy: row['undone_by'] === null ? null : (String(row['undone_by']) as ChangeId), // written by markUndone
  };
}

/** The touched row that a row of the journal holds. */
export function changedRowOf(row: NamedRow): ChangedRow {
  return {
    table: String(row['table_name']) as TableName, // written by writeChange
    rowId: String(row['row_id']),
    before: sqlToImage(row['before'] ?? null),
    after: sqlToImage(row['after'] ?? null),
  };
}

const imageToSql = (image: unknown): SqlValue => (image === null ? null : JSON.stringify(image));
const sqlToImage = (value: SqlValue): unknown => (value === null ? null : JSON.parse(String(value)));
