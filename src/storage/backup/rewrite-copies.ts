// The copies of a studio that lie beside it: its backups, and what a restore set aside. What is erased in the studio is erased
// in them too: in a copy of each, which takes its place once it is known to be whole.

import { chmodSync, copyFileSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Clock, isDate, type PlainDate } from '#core';
import type { Store } from '#studio';
import { sqliteDialect } from '../dialect/dialect.ts';
import { migrations } from '../migrations/list.ts';
import { migrate } from '../migrations/migrate.ts';
import { openConnection } from '../sqlite/connection.ts';
import { createFileConnections } from '../sqlite/sqlite-connections.ts';
import { messageOf } from '../sqlite/sqlite-error.ts';
import { createStore } from '../store/create-store.ts';
import { parseBackupName } from './backup-name.ts';
import { removeDatabase, writeThrough } from './backups.ts';
import { verifyFile } from './verify-file.ts';

/** A copy of the studio beside it. */
export interface Copy {
  readonly path: string;
  readonly day: PlainDate;
}

/** A copy that could not be rewritten, and is as it was. */
export interface CopyLeft {
  readonly path: string;
  readonly detail: string;
}

/** The copies of the studio in a file, oldest first. */
export function listCopies(path: string): readonly Copy[] {
  const folder = dirname(path);
  const backups = join(folder, 'backups');
  const aside = new RegExp(
    `^${basename(path, '.sqlite')}-set-aside-(\\d{4}-\\d\\d-\\d\\d)(-\\d+)?\\.sqlite$`,
  );
  const copies: Copy[] = [];
  for (const file of listFiles(backups)) {
    const backup = parseBackupName(file);
    if (backup !== null) copies.push({ path: join(backups, file), day: backup.day });
  }
  for (const file of listFiles(folder)) {
    const day = aside.exec(file)?.[1];
    if (day !== undefined && isDate(day)) copies.push({ path: join(folder, file), day });
  }
  return copies.sort((a, b) => (a.day === b.day ? a.path.localeCompare(b.path) : a.day < b.day ? -1 : 1));
}

/** Works on each copy in turn; `work` says whether it changed anything. Those that could not be changed come back. */
export async function rewriteCopies(
  path: string,
  clock: Clock,
  work: (store: Store, done: number) => Promise<boolean>,
): Promise<readonly CopyLeft[]> {
  const left: CopyLeft[] = [];
  for (const [at, copy] of listCopies(path).entries()) {
    const detail = await rewriteCopy(copy.path, clock, (store) => work(store, at));
    if (detail !== null) left.push({ path: copy.path, detail });
  }
  return left;
}

/** Null, or why the copy is as it was. */
async function rewriteCopy(
  path: string,
  clock: Clock,
  work: (store: Store) => Promise<boolean>,
): Promise<string | null> {
  const part = join(dirname(path), 'unfinished.part');
  try {
    removeDatabase(part);
    // What a restore set aside may have its WAL beside it.
    for (const tail of ['', '-wal']) if (existsSync(path + tail)) copyFileSync(path + tail, part + tail);
    chmodSync(part, 0o600);
    const found = verifyFile(part);
    if (!found.ok) return found.error.detail;
    const writer = openConnection(part, 'write');
    const store = createStore(createFileConnections(part, writer));
    let changed = false;
    try {
      // An older copy would be brought up to date when it is restored; only so can it be read here.
      const migrated = await migrate(writer.database, sqliteDialect, migrations, clock.instant());
      if (!migrated.ok) return `it cannot be read by this Levare (${migrated.error.kind})`;
      changed = await work(store);
    } finally {
      await store.close();
    }
    if (!changed) return null;
    const verified = verifyFile(part);
    if (!verified.ok) return verified.error.detail;
    writeThrough(part);
    renameSync(part, path);
    for (const tail of ['-wal', '-shm']) rmSync(path + tail, { force: true });
    writeThrough(dirname(path));
    return null;
  } catch (error) {
    return messageOf(error);
  } finally {
    try {
      removeDatabase(part);
    } catch {
      // What kept it from being written may keep it from being cleared away; the next backup clears it.
    }
  }
}

function listFiles(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
