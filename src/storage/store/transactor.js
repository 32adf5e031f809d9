// Writing inside one change. Rows are kept in hand until a list or the end of the change needs them in the database, so
// that a replan of eighty segments goes in a few statements, and so that each row has one first image and one last.
import { assert, present } from '#core';
import { isSameRow, recordToRow, rowToRecord } from '../row/row-mapping.js';
import { tables } from '../schema/tables.js';
import { createReader, describe, selectRows, selectRowsById } from './reader.js';
import { cutIntoBatches } from './statements.js';
/** Begins the writing of one change on a connection that has its transaction open; `id` is null for what-if. */
export function createTransactor(run, statements, id) {
    const reader = createReader(run, statements);
    const rowsByTable = new Map();
    const touched = [];
    const unwritten = new Map();
    let open = true;
    // Steps that reach the database run one after the other, also when the caller does not wait between them.
    let last = Promise.resolve();
    const inOrder = async (step) => {
        assert(open, 'a transactor is used only inside its change');
        const result = last.then(step);
        last = result.catch(() => null); // the caller sees the failure; the next step goes on
        return await result;
    };
    const inHand = (table, rowId) => {
        const rows = rowsByTable.get(table) ?? new Map();
        rowsByTable.set(table, rows);
        const known = rows.get(rowId) ?? { before: undefined, stored: undefined, wanted: undefined };
        rows.set(rowId, known);
        return known;
    };
    const want = (table, rowId, row) => {
        assert(open, 'a transactor is used only inside its change');
        const hand = inHand(table, rowId);
        if (hand.wanted === undefined)
            touched.push({ table, rowId });
        hand.wanted = row;
        const ids = unwritten.get(table) ?? new Set();
        unwritten.set(table, ids.add(rowId));
    };
    /** Learns what the database holds, where this change has not learnt it yet. */
    const lookUp = async (table, ids) => {
        const unknown = ids.filter((rowId) => inHand(table, rowId).stored === undefined);
        for (const batch of cutIntoBatches(unknown)) {
            for (const row of await selectRowsById(run, statements, table, batch))
                learn(table, String(row[idPosition(table)]), row);
            for (const rowId of batch)
                learn(table, rowId, null);
        }
    };
    const learn = (table, rowId, row) => {
        const hand = inHand(table, rowId);
        if (hand.stored === undefined)
            hand.stored = row;
        if (hand.before === undefined)
            hand.before = row;
    };
    const writeOut = async (table) => {
        const ids = [...(unwritten.get(table) ?? [])];
        if (ids.length === 0)
            return;
        unwritten.delete(table);
        await lookUp(table, ids);
        const described = describe(table);
        const puts = [];
        const removes = [];
        for (const rowId of ids) {
            const hand = inHand(table, rowId);
            const wanted = hand.wanted ?? null;
            const stored = hand.stored ?? null;
            if (wanted === null && stored !== null)
                removes.push(rowId);
            if (wanted !== null && (stored === null || !isSameRow(described, stored, wanted)))
                puts.push(wanted);
            hand.stored = wanted;
        }
        for (const batch of cutIntoBatches(removes))
            await run(statements.removeByIds(described, batch.length), batch);
        for (const batch of cutIntoBatches(puts))
            await run(statements.upsert(described, batch.length), batch.flat());
    };
    const transactor = {
        async get(table, rowId) {
            const hand = inHand(table, rowId);
            if (hand.wanted === undefined && hand.stored === undefined)
                await inOrder(() => lookUp(table, [rowId]));
            assert(open, 'a transactor is used only inside its change');
            const row = hand.wanted === undefined ? hand.stored : hand.wanted;
            return row === null || row === undefined ? null : rowToRecord(tables[table], row);
        },
        list(table, query = {}) {
            return inOrder(async () => {
                await writeOut(table);
                const rows = await selectRows(run, statements, table, query);
                for (const row of rows)
                    learn(table, String(row[idPosition(table)]), row);
                return rows.map((row) => rowToRecord(tables[table], row));
            });
        },
        listChanges: (most) => inOrder(() => reader.listChanges(most)),
        getChange: (change) => inOrder(() => reader.getChange(change)),
        listChangedRows: (change) => inOrder(() => reader.listChangedRows(change)),
        async put(table, record) {
            want(table, record.id, recordToRow(tables[table], record));
        },
        async remove(table, rowId) {
            want(table, rowId, null);
        },
        markUndone: (change, by) => inOrder(async () => {
            assert(id === null || by === id, 'a change is undone by the change in hand');
            const found = await reader.getChange(change);
            assert(found !== null, `the change ${change} to undo is in the journal`);
            await run(statements.markUndone, [by, change]);
        }),
    };
    return {
        transactor,
        close() {
            open = false;
        },
        async finish() {
            await inOrder(async () => {
                for (const table of [...unwritten.keys()])
                    await writeOut(table);
            });
            open = false;
            return touched.flatMap(({ table, rowId }) => changedRow(table, rowId, inHand(table, rowId)) ?? []);
        },
    };
}
const idPosition = (table) => {
    const columns = describe(table).columns;
    return columns.indexOf(present(describe(table).columnByField.get('id'), `${table}.id`));
};
function changedRow(table, rowId, hand) {
    const described = describe(table);
    const before = hand.before ?? null;
    const after = hand.wanted ?? null;
    if (before === null && after === null)
        return null;
    if (before !== null && after !== null && isSameRow(described, before, after))
        return null;
    const image = (row) => (row === null ? null : rowToRecord(described, row));
    return { table, rowId, before: image(before), after: image(after) };
}
//# sourceMappingURL=transactor.js.map