// Reading inside one transaction.
import { assert } from '#core';
import { namedToRow, rowToRecord, valueToSql } from '../row/row-mapping.js';
import { tables } from '../schema/tables.js';
import { changedRowOf, changeRecordOf } from './journal.js';
import { comparableColumn } from './statements.js';
/** The table's description with its own type narrowed away, for code that works on any table. */
export const describe = (table) => tables[table];
export function createReader(run, statements) {
    return {
        async get(table, id) {
            const [row] = await selectRowsById(run, statements, table, [id]);
            return row === undefined ? null : rowToRecord(tables[table], row);
        },
        async list(table, query = {}) {
            const rows = await selectRows(run, statements, table, query);
            return rows.map((row) => rowToRecord(tables[table], row));
        },
        async listChanges(most) {
            assert(Number.isSafeInteger(most) && most >= 0, 'the number of changes wanted is whole and not negative');
            return (await run(statements.newestChanges, [most])).map(changeRecordOf);
        },
        async getChange(id) {
            const [found] = await run(statements.changeById, [id]);
            return found === undefined ? null : changeRecordOf(found);
        },
        async listChangedRows(id) {
            return (await run(statements.changedRows, [id])).map(changedRowOf);
        },
    };
}
/** The rows with these ids, in no particular order; at most 64 ids, each once. */
export async function selectRowsById(run, statements, table, ids) {
    const described = describe(table);
    const found = await run(statements.selectByIds(described, ids.length), ids);
    return found.map((row) => namedToRow(described, row));
}
/** The rows that a query asks for, in its order. */
export async function selectRows(run, statements, table, query) {
    const described = describe(table);
    const equal = [];
    const none = [];
    const parameters = [];
    for (const [field, value] of Object.entries(query.where ?? {})) {
        const column = comparableColumn(described, field);
        if (value === null)
            none.push(column);
        else {
            equal.push(column);
            parameters.push(valueToSql(described.table, column, value));
        }
    }
    const range = query.range;
    const ranged = range === undefined ? null : comparableColumn(described, range.column);
    assert(ranged === null || ranged.kind === 'text', 'a range is over a text column');
    for (const end of [range?.from, range?.to])
        if (ranged !== null && end !== undefined)
            parameters.push(valueToSql(described.table, ranged, end));
    const shape = {
        equal,
        none,
        from: range?.from === undefined ? null : ranged,
        to: range?.to === undefined ? null : ranged,
        orderBy: (query.orderBy ?? []).map((field) => comparableColumn(described, field)),
    };
    const found = await run(statements.list(described, shape), parameters);
    return found.map((row) => namedToRow(described, row));
}
//# sourceMappingURL=reader.js.map