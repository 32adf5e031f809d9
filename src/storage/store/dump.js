// The whole studio as plain data, for export, and back into an empty store.
import { err, ok } from '#core';
import { recordToRow } from '../row/row-mapping.js';
import { tableNames, tables } from '../schema/tables.js';
import { changedRowOf, changeRecordOf, writeChange } from './journal.js';
import { createReader, describe } from './reader.js';
import { cutIntoBatches } from './statements.js';
/** Every row by table, by id, and the journal, oldest change first. */
export async function dumpStudio(run, statements) {
    const reader = createReader(run, statements);
    const rows = {};
    for (const table of tableNames)
        rows[table] = await reader.list(table);
    const touchedByChange = new Map();
    for (const row of await run(statements.allChangedRows)) {
        const change = String(row['change']);
        const touched = touchedByChange.get(change) ?? [];
        touched.push(changedRowOf(row));
        touchedByChange.set(change, touched);
    }
    const changes = (await run(statements.oldestChanges)).map((row) => {
        const change = changeRecordOf(row);
        return { ...change, rows: touchedByChange.get(change.id) ?? [] };
    });
    return { format: 'levare-studio/1', tables: rows, changes }; // each table listed just above
}
/** Writes a dump into an empty store: all of it, or nothing when it throws. */
export async function loadStudio(run, statements, dump) {
    let there = 0;
    for (const name of ['change', ...tableNames.map((table) => describe(table).name)])
        there += Number((await run(statements.count(name)))[0]?.['rows']);
    if (there > 0)
        return { end: 'rollback', value: err({ kind: 'StoreNotEmpty', rows: there }) };
    for (const table of tableNames)
        await loadTable(run, statements, table, dump.tables[table]);
    for (const { rows, ...change } of dump.changes)
        await writeChange(run, statements, change, rows);
    return { end: 'commit', value: ok(null) };
}
async function loadTable(run, statements, table, records) {
    const names = describe(table).columns.map((column) => column.name);
    for (const batch of cutIntoBatches(records))
        await run(statements.insert(describe(table).name, names, batch.length), batch.flatMap((record) => recordToRow(tables[table], record)));
}
//# sourceMappingURL=dump.js.map