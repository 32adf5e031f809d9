// The journal: one row for each change, and for each row it touched what was there before and after, as JSON. Undo,
// once-only delivery and the change list read it.
import { cutIntoBatches } from './statements.js';

const changedRowColumns = ['change', 'position', 'table_name', 'row_id', 'before', 'after'];
/** Writes a change and its rows at the journal's end. */
export async function writeChange(run, statements, change, rows) {
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
    const values = [];
    for (const row of batch)
      values.push(change.id, position++, row.table, row.rowId, imageToSql(row.before), imageToSql(row.after));
    await run(statements.insert('changed_row', changedRowColumns, batch.length), values);
  }
}
/** The change that a row of the journal holds. */
export function changeRecordOf(row) {
  return {
    id: String(row['id']), // written by writeChange
    at: String(row['at']),
    label: String(row['label']),
    type: String(row['type']),
    reply: JSON.parse(String(row['reply'])),
    undoneBy: row['undone_by'] === null ? null : String(row['undone_by']), // written by markUndone
  };
}
/** The touched row that a row of the journal holds. */
export function changedRowOf(row) {
  return {
    table: String(row['table_name']), // written by writeChange
    rowId: String(row['row_id']),
    before: sqlToImage(row['before'] ?? null),
    after: sqlToImage(row['after'] ?? null),
  };
}
const imageToSql = (image) => (image === null ? null : JSON.stringify(image));
const sqlToImage = (value) => (value === null ? null : JSON.parse(String(value)));
//# sourceMappingURL=journal.js.map
