// Brings a database up to the newest migration, in one transaction under a lock: another program that opens the same
// database meanwhile waits and then finds nothing left to do. A database from a newer Levare is left alone.

import { type Kysely, sql } from 'kysely';
import { err, ok, type Result } from '#core';
import type { Dialect } from '../dialect/dialect.ts';
import { createRun, type StudioDatabase } from '../store/statements.ts';
import { createTable } from './create-table.ts';
import type { Migration } from './migration.ts';

/** `found` is the database's newest migration, `known` this program's. */
export type DatabaseNewer = {
  readonly kind: 'DatabaseNewer';
  readonly found: number;
  readonly known: number;
};
/** The database holds tables of something else. */
export type NotAStudio = { readonly kind: 'NotAStudio'; readonly tables: readonly string[] };

export interface DatabaseState {
  /** The newest migration applied; 0 for an empty database. */
  readonly version: number;
  readonly pending: readonly Migration[];
}

/** What is applied and what is pending, without touching anything. */
export async function readDatabaseState(
  database: Kysely<StudioDatabase>,
  dialect: Dialect,
  migrations: readonly Migration[],
): Promise<Result<DatabaseState, DatabaseNewer | NotAStudio>> {
  const names = await listTables(database, dialect);
  if (!names.includes('migration'))
    return names.length === 0
      ? ok({ version: 0, pending: migrations })
      : err({ kind: 'NotAStudio', tables: names });
  const applied = await database.selectFrom('migration').select('number').execute();
  const found = Math.max(0, ...applied.map((row) => Number(row['number'])));
  const known = migrations.length;
  if (found > known) return err({ kind: 'DatabaseNewer', found, known });
  return ok({ version: found, pending: migrations.filter((m) => m.number > found) });
}

/** Applies what is pending: all of it or, when a step throws, none. `at` is an ISO instant for the record. */
export async function migrate(
  database: Kysely<StudioDatabase>,
  dialect: Dialect,
  migrations: readonly Migration[],
  at: string,
): Promise<Result<null, DatabaseNewer | NotAStudio>> {
  return await database.connection().execute(async (connection) => {
    for (const statement of dialect.beginMigration) await sql.raw(statement).execute(connection);
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
      if (copy !== null) await sql.raw(copy).execute(connection);
      for (const migration of pending) {
        await migration.apply(connection, dialect);
        await connection
          .insertInto('migration')
          .values({ number: migration.number, name: migration.name, at })
          .execute();
      }
      await sql.raw('commit').execute(connection);
      return ok(null);
    } catch (error) {
      await sql
        .raw('rollback')
        .execute(connection)
        .catch(() => null); // the first error is the one to tell
      throw error;
    }
  });
}

async function listTables(database: Kysely<StudioDatabase>, dialect: Dialect): Promise<readonly string[]> {
  return (await createRun(database)(dialect.listTables)).map((row) => String(row['name']));
}
