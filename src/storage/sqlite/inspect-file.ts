import { existsSync } from 'node:fs';
import type { Result } from '#core';
import { sqliteDialect } from '../dialect/dialect.ts';
import {
  type DatabaseNewer,
  type DatabaseState,
  type NotAStudio,
  readDatabaseState,
} from '../migrations/migrate.ts';
import type { Migration } from '../migrations/migration.ts';
import { openConnection } from './connection.ts';

/**
 * Looks at what a file holds without changing it or leaving anything beside it; only where a WAL lies there, SQLite adds its
 * index. Throws what SQLite throws.
 */
export async function inspectFile(
  path: string,
  migrations: readonly Migration[],
): Promise<Result<DatabaseState, DatabaseNewer | NotAStudio>> {
  // Allowed to write, SQLite would put into the file what a program that broke off left beside it.
  const isAlone = !['-wal', '-journal'].some((tail) => existsSync(path + tail));
  const { database } = openConnection(path, isAlone ? 'look' : 'read');
  try {
    return await readDatabaseState(database, sqliteDialect, migrations);
  } finally {
    await database.destroy();
  }
}
