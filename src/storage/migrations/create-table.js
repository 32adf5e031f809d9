// A short notation for tables in migrations: one line for each column, `slot: 'text null references slot'`.
import { sql } from 'kysely';
import { assert, present } from '#core';
const notation = /^(text|integer|real|boolean|json)( null)?( key)?(?: references (\w+))?$/;
/**
 * Creates a table. A column is its kind, then `null` when it may be null, `key` when it is the table's key (all such
 * columns together), and `references table` when it holds ids of that table. References are checked when the
 * transaction ends, so that undo and import may write rows in any order.
 */
export async function createTable(database, dialect, name, columns) {
    let table = database.schema.createTable(name);
    const keys = [];
    for (const [column, line] of Object.entries(columns)) {
        const found = notation.exec(line);
        assert(found !== null, `the column ${name}.${column} is written as "kind [null] [key] [references table]"`);
        const [, kind, nullable, key, target] = found;
        const type = dialect.columnType[present(kind, 'kind')]; // one of the kinds in the notation
        table = table.addColumn(column, sql.raw(type), (c) => (nullable ? c : c.notNull()));
        if (key)
            keys.push(column);
        if (target)
            table = table.addForeignKeyConstraint(`${name}_${column}_reference`, [column], target, ['id'], (c) => c.deferrable().initiallyDeferred());
    }
    assert(keys.length > 0, `the table ${name} has a key`);
    await table.addPrimaryKeyConstraint(`${name}_key`, keys).modifyEnd(sql.raw(dialect.tableSuffix)).execute();
}
/** Creates an index on some columns of a table, named after them. */
export async function createIndex(database, table, columns) {
    await database.schema
        .createIndex(`${table}_by_${columns.join('_')}`)
        .on(table)
        .columns([...columns])
        .execute();
}
//# sourceMappingURL=create-table.js.map