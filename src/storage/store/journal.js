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
            values.push(change.id, position++, row.table, row.rowId, imageToSql(row.before), afterToSql(row));
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
    const before = sqlToImage(row['before'] ?? null);
    return {
        table: String(row['table_name']), // written by writeChange
        rowId: String(row['row_id']),
        before,
        after: sqlToAfter(row['after'] ?? null, before),
    };
}
const imageToSql = (image) => (image === null ? null : JSON.stringify(image));
const sqlToImage = (value) => (value === null ? null : JSON.parse(String(value)));
const isFields = (image) => typeof image === 'object' && image !== null && !Array.isArray(image);
function afterToSql({ before, after }) {
    if (!isFields(before) || !isFields(after))
        return imageToSql(after);
    const names = Object.keys(after);
    const sameFields = names.length === Object.keys(before).length && names.every((name) => Object.hasOwn(before, name));
    if (!sameFields)
        return imageToSql(after);
    const differing = names.filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]));
    return JSON.stringify([Object.fromEntries(differing.map((name) => [name, after[name]]))]);
}
function sqlToAfter(value, before) {
    const kept = sqlToImage(value);
    return Array.isArray(kept) && isFields(before) ? { ...before, ...kept[0] } : kept;
}
//# sourceMappingURL=journal.js.map