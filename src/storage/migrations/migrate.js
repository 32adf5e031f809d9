// Brings a database up to the newest migration, in one transaction under a lock: another program that opens the same
// database meanwhile waits and then finds nothing left to do. A database from a newer Levare is left alone.
import { sql } from 'kysely';
import { err, ok } from '#core';
import { createRun } from '../store/statements.js';
import { createTable } from './create-table.js';
/** What is applied and what is pending, without touching anything. */
export async function readDatabaseState(database, dialect, migrations) {
    const names = await listTables(database, dialect);
    if (!names.includes('migration'))
        return names.length === 0
            ? ok({ version: 0, pending: migrations })
            : err({ kind: 'NotAStudio', tables: names });
    const applied = await database.selectFrom('migration').select('number').execute();
    const found = Math.max(0, ...applied.map((row) => Number(row['number'])));
    const known = migrations.length;
    if (found > known)
        return err({ kind: 'DatabaseNewer', found, known });
    return ok({ version: found, pending: migrations.filter((m) => m.number > found) });
}
/** Applies what is pending: all of it or, when a step throws, none. `at` is an ISO instant for the record. */
export async function migrate(database, dialect, migrations, at) {
    return await database.connection().execute(async (connection) => {
        for (const statement of dialect.beginMigration)
            await sql.raw(statement).execute(connection);
        try {
            const state = await readDatabaseState(connection, dialect, migrations);
            if (!state.ok) {
                await sql.raw('rollback').execute(connection);
                return state;
            }
            if (!(await listTables(connection, dialect)).includes('migration'))
                await createTable(connection, dialect, 'migration', {
                    number: 'integer key',
                    name: 'text',
                    at: 'text',
                });
            const { version, pending } = state.value;
            const copy = version > 0 && pending[0] ? dialect.copyBeforeMigration(pending[0].number) : null;
            if (copy !== null)
                await sql.raw(copy).execute(connection);
            for (const migration of pending) {
                await migration.apply(connection, dialect);
                await connection
                    .insertInto('migration')
                    .values({ number: migration.number, name: migration.name, at })
                    .execute();
            }
            await sql.raw('commit').execute(connection);
            return ok(null);
        }
        catch (error) {
            await sql
                .raw('rollback')
                .execute(connection)
                .catch(() => null); // the first error is the one to tell
            throw error;
        }
    });
}
async function listTables(database, dialect) {
    return (await createRun(database)(dialect.listTables)).map((row) => String(row['name']));
}
//# sourceMappingURL=migrate.js.map