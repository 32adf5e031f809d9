// The embedded store: one SQLite file in the studio's data folder, or a database in memory that is gone when closed.

import { chmodSync, closeSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Clock, err, ok, type Result } from '#core';
import type { Store } from '#studio';
import { sqliteDialect } from '../dialect/dialect.ts';
import { migrations } from '../migrations/list.ts';
import { migrate } from '../migrations/migrate.ts';
import type { OpenFault } from '../open-fault.ts';
import { createStore } from '../store/create-store.ts';
import { openConnection } from './connection.ts';
import { createFileConnections, createMemoryConnections } from './sqlite-connections.ts';

export interface SqliteStoreOptions {
  /** The studio's file; its folder is made when missing. Backups go to `backups` beside it. */
  readonly path: string;
  readonly clock: Clock;
}

/** Opens the studio in a file, making it when there is none. */
export async function createSqliteStore({
  path,
  clock,
}: SqliteStoreOptions): Promise<Result<Store, OpenFault>> {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  closeSync(openSync(path, 'a', 0o600));
  chmodSync(path, 0o600);
  const writer = openConnection(path, 'write');
  const migrated = await migrate(writer.database, sqliteDialect, migrations, clock.instant());
  if (!migrated.ok) {
    await writer.database.destroy();
    return err({ path, ...migrated.error });
  }
  return ok(createStore(createFileConnections(path, writer)));
}

/** A studio in memory, for tests and for what-ifs on the command line. Reads and changes take turns on it. */
export async function createMemoryStore(clock: Clock): Promise<Store> {
  const only = openConnection(':memory:', 'write');
  await migrate(only.database, sqliteDialect, migrations, clock.instant());
  return createStore(createMemoryConnections(only));
}
