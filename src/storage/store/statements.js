// The SQL of the few things a store does, built by Kysely once for each shape and kept as text: a replan writes the
// same shapes over and over, and building them costs more than running them.
import { CompiledQuery } from 'kysely';
import { assert, present } from '#core';
/** `Run` on a Kysely connection. */
export const createRun = (connection) => async (sql, parameters = []) => (await connection.executeQuery(CompiledQuery.raw(sql, [...parameters]))).rows;
export function createStatements(database) {
    const textByShape = new Map();
    const kept = (shape, build) => {
        const known = textByShape.get(shape);
        if (known !== undefined)
            return known;
        const text = build().compile().sql;
        textByShape.set(shape, text);
        return text;
    };
    // Values only mark the places of parameters here.
    const places = (count) => new Array(count).fill('');
    const placeRows = (columns, count) => places(count).map(() => Object.fromEntries(columns.map((name) => [name, ''])));
    const changes = database.selectFrom('change').selectAll();
    const changedRows = database.selectFrom('changed_row').selectAll();
    return {
        selectByIds: (table, count) => kept(`ids ${table.name} ${count}`, () => database.selectFrom(table.name).selectAll().where('id', 'in', places(count))),
        list: (table, shape) => kept(listKey(table, shape), () => buildList(database, table, shape)),
        count: (table) => kept(`count ${table}`, () => database.selectFrom(table).select((e) => e.fn.countAll().as('rows'))),
        upsert: (table, count) => kept(`upsert ${table.name} ${count}`, () => {
            const names = table.columns.map((column) => column.name);
            const others = names.filter((name) => name !== 'id');
            return database
                .insertInto(table.name)
                .values(placeRows(names, count))
                .onConflict((conflict) => conflict
                .column('id')
                .doUpdateSet((e) => Object.fromEntries(others.map((name) => [name, e.ref(`excluded.${name}`)]))));
        }),
        removeByIds: (table, count) => kept(`remove ${table.name} ${count}`, () => database.deleteFrom(table.name).where('id', 'in', places(count))),
        insert: (table, columns, count) => kept(`insert ${table} ${columns.join()} ${count}`, () => database.insertInto(table).values(placeRows(columns, count))),
        newestChanges: changes.orderBy('number', 'desc').limit(1).compile().sql,
        oldestChanges: changes.orderBy('number').compile().sql,
        changeById: changes.where('id', '=', '').compile().sql,
        changedRows: changedRows.where('change', '=', '').orderBy('position').compile().sql,
        allChangedRows: changedRows.orderBy('change').orderBy('position').compile().sql,
        insertChange: database
            .insertInto('change')
            .values((e) => ({
            id: '',
            at: '',
            label: '',
            type: '',
            reply: '',
            undone_by: '',
            // Changes follow one another (`beginChange`), so the next number is free.
            number: e
                .selectFrom('change')
                .select((f) => f(f.fn.coalesce(f.fn.max('number'), f.lit(0)), '+', f.lit(1)).as('next')),
        }))
            .compile().sql,
        markUndone: database.updateTable('change').set({ undone_by: '' }).where('id', '=', '').compile().sql,
    };
}
// Larger than any studio's usual change, small enough for the parameters that a statement may have.
const mostAtOnce = 64;
/** Cuts a list into pieces whose lengths are powers of two up to 64, so that few shapes of statement are needed. */
export function cutIntoBatches(items) {
    const batches = [];
    for (let at = 0; at < items.length;) {
        const left = items.length - at;
        const size = left >= mostAtOnce ? mostAtOnce : 2 ** Math.floor(Math.log2(left));
        batches.push(items.slice(at, at + size));
        at += size;
    }
    return batches;
}
function listKey(table, shape) {
    const names = (columns) => columns.map((column) => column?.name ?? '').join();
    return [
        'list',
        table.name,
        names(shape.equal),
        names(shape.none),
        names([shape.from, shape.to]),
        names(shape.orderBy),
    ].join(' ');
}
function buildList(database, table, shape) {
    let query = database.selectFrom(table.name).selectAll();
    for (const column of shape.equal)
        query = query.where(column.name, '=', '');
    for (const column of shape.none)
        query = query.where(column.name, 'is', null);
    if (shape.from)
        query = query.where(shape.from.name, '>=', '');
    if (shape.to)
        query = query.where(shape.to.name, '<=', '');
    for (const column of shape.orderBy)
        query = query.orderBy(column.name, (order) => (column.nullable ? order.asc().nullsFirst() : order.asc()));
    return query.orderBy(present(table.columnByField.get('id'), `${table.table}.id`).name);
}
/** The named column of a table. Throws when there is none, or when JSON is asked to be compared. */
export function comparableColumn(table, field) {
    const column = present(table.columnByField.get(field), `the field ${table.table}.${field}`);
    assert(column.kind !== 'json', `${table.table}.${field} can be compared`);
    return column;
}
//# sourceMappingURL=statements.js.map