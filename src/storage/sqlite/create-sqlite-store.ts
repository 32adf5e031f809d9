// The embedded store: one SQLite file in the studio's data folder, or a database in memory that is gone when closed.

import { accessSync, chmodSync, closeSync, constants, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Clock, err, ok, type Result } from '#core';
import type { Store } from '#studio';
import type { Backup } from '../backup/backup-name.ts';
import { type Backups, createBackups } from '../backup/backups.ts';
import { type Copy, type CopyLeft, listCopies, rewriteCopies } from '../backup/rewrite-copies.ts';
import type { FileDoubtful } from '../backup/verify-file.ts';
import { sqliteDialect } from '../dialect/dialect.ts';
import { migrations as allMigrations } from '../migrations/list.ts';
import { type DatabaseState, migrate } from '../migrations/migrate.ts';
import type { Migration } from '../migrations/migration.ts';
import type { OpenFault } from '../open-fault.ts';
import { createStore } from '../store/create-store.ts';
import { openConnection, type SqliteConnection } from './connection.ts';
import { lockFolder } from './folder-lock.ts';
import { inspectFile } from './inspect-file.ts';
import { makeFolder } from './make-folder.ts';
import { compactFile, createFileConnections, createMemoryConnections } from './sqlite-connections.ts';
import { isDamage, isWorld, messageOf } from './sqlite-error.ts';

export interface SqliteStoreOptions {
  /** The studio's file; its folder is made when missing. Backups go to `backups` beside it. */
  readonly path: string;
  readonly clock: Clock;
  /** Told of each backup made or failed, at start and on each new day. */
  readonly onBackup?: (outcome: Result<string, FileDoubtful>) => void;
  /** For tests of migrating: the migrations to know. */
  readonly migrations?: readonly Migration[];
}

export interface SqliteStore extends Store {
  readonly backupFolder: string;
  /** Newest first. */
  listBackups(): readonly Backup[];
  /** Makes a backup now; its file name in the backup folder comes back. */
  backUp(): Promise<Result<string, FileDoubtful>>;
  /** Makes a backup unless today has one (null then). The store asks itself each hour. */
  backUpIfDue(): Promise<Result<string | null, FileDoubtful>>;
  /** Backups and what a restore set aside, oldest first. */
  listCopies(): readonly Copy[];
  /**
   * Works on each of them, so that what is erased here is erased there; `work` says whether it changed anything, and is told
   * how many are done. Those that could not be changed come back, as they were.
   */
  rewriteCopies(work: (copy: Store, done: number) => Promise<boolean>): Promise<readonly CopyLeft[]>;
}

/**
 * Opens the studio in a file, making it when there is none. A file that is refused at first sight is left alone, with
 * nothing made beside it; a studio that has something in it is backed up before anything else happens to it.
 */
export async function createSqliteStore(
  options: SqliteStoreOptions,
): Promise<Result<SqliteStore, OpenFault>> {
  const { path, clock } = options;
  const folder = dirname(path);
  const backups = createBackups(path, clock);
  const looked = await tellFaults(path, backups, () => lookAtFile(options, backups));
  if (!looked.ok) return looked;
  try {
    makeFolder(folder);
  } catch (error) {
    return err({ kind: 'FolderUnusable', path: folder, detail: messageOf(error) });
  }
  const lock = lockFolder(folder, clock.instant());
  if (!lock.ok) return lock;
  let opened: Result<Store, OpenFault> | null = null;
  try {
    opened = await tellFaults(path, backups, () => openFile(options, backups));
  } finally {
    if (!opened?.ok) lock.value.release();
  }
  if (!opened.ok) return opened;
  const store = opened.value;
  const timer = setInterval(() => {
    backups.makeIfDue().then(
      (outcome) => {
        if (!outcome.ok) options.onBackup?.(outcome);
        else if (outcome.value !== null) options.onBackup?.(ok(outcome.value));
      },
      (error: unknown) => options.onBackup?.(err({ kind: 'unreadable', detail: messageOf(error) })),
    );
  }, hour);
  timer.unref();
  return ok({
    ...store,
    backupFolder: backups.folder,
    listBackups: () => backups.list(),
    backUp: () => backups.make(null),
    backUpIfDue: () => backups.makeIfDue(),
    listCopies: () => listCopies(path),
    rewriteCopies: (work) => backups.meanwhile(() => rewriteCopies(path, clock, work)),
    async close() {
      clearInterval(timer);
      await store.close();
      lock.value.release();
    },
  });
}

/** A studio in memory, for tests and for what-ifs on the command line. Reads and changes take turns on it. */
export async function createMemoryStore(clock: Clock): Promise<Store> {
  const only = openConnection(':memory:', 'write');
  await migrate(only.database, sqliteDialect, allMigrations, clock.instant());
  return createStore(createMemoryConnections(only));
}

const hour = 3_600_000;

/** Does some work on the file; what is wrong with it or with the world around it becomes a fault. */
async function tellFaults<T>(
  path: string,
  backups: Backups,
  work: () => Promise<Result<T, OpenFault>>,
): Promise<Result<T, OpenFault>> {
  try {
    return await work();
  } catch (error) {
    if (isDamage(error)) return err(fileDamaged(path, backups, messageOf(error)));
    if (isWorld(error)) return err({ kind: 'FolderUnusable', path, detail: messageOf(error) });
    throw error;
  }
}

/** What is in the file, before anything is done to it. */
async function lookAtFile(
  { path, migrations = allMigrations }: SqliteStoreOptions,
  backups: Backups,
): Promise<Result<DatabaseState, OpenFault>> {
  const file = statSync(path, { throwIfNoEntry: false });
  if (file === undefined) return ok({ version: 0, pending: migrations });
  if (file.size === 0 && backups.list().length > 0) return err(fileDamaged(path, backups, 'it is empty'));
  if (!isUsable(path)) chmodSync(path, file.mode | 0o600); // SQLite gives what it lays beside it the same rights
  const state = await inspectFile(path, migrations);
  return state.ok ? state : err({ path, ...state.error });
}

function isUsable(path: string): boolean {
  try {
    accessSync(path, constants.R_OK | constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

async function openFile(options: SqliteStoreOptions, backups: Backups): Promise<Result<Store, OpenFault>> {
  const { path, clock, migrations = allMigrations } = options;
  // Once more: until the folder was locked, another program may have had it.
  const state = await lookAtFile(options, backups);
  if (!state.ok) return state;
  makePrivateFile(path);
  const backedUp = await backUpAtOpening(options, backups, state.value);
  if (!backedUp.ok) return backedUp;

  const writer = openConnection(path, 'write');
  try {
    const migrated = await migrate(writer.database, sqliteDialect, migrations, clock.instant());
    if (migrated.ok) {
      compactIfNoted(writer);
      return ok(createStore(createFileConnections(path, writer)));
    }
    await writer.database.destroy();
    return err({ path, ...migrated.error });
  } catch (error) {
    await writer.database.destroy();
    throw error;
  }
}

/** What was erased while there was no room to write the file anew, or before the power went, is seen to now. */
function compactIfNoted(writer: SqliteConnection): void {
  if (writer.handle.pragma('user_version', { simple: true }) === 0) return;
  try {
    compactFile(writer);
  } catch (error) {
    // Without room a teacher still gets at the day's lessons; the next opening tries again.
    if (!isWorld(error)) throw error;
  }
}

/** Only the owner may read it: it is about children. SQLite gives the files beside it the same rights. */
function makePrivateFile(path: string): void {
  closeSync(openSync(path, 'a', 0o600));
  chmodSync(path, 0o600);
}

async function backUpAtOpening(
  { path, onBackup }: SqliteStoreOptions,
  backups: Backups,
  { version, pending }: DatabaseState,
): Promise<Result<null, OpenFault>> {
  if (version === 0) return ok(null);
  const made = await backups.make(pending[0]?.number ?? null);
  onBackup?.(made);
  if (made.ok) return ok(null);
  if (made.error.kind === 'damaged') return err(fileDamaged(path, backups, made.error.detail));
  // Without a migration ahead, a full disk must not keep a teacher from the day's lessons.
  return pending.length > 0 ? err({ kind: 'BackupFailed', path, detail: made.error.detail }) : ok(null);
}

const fileDamaged = (path: string, backups: Backups, detail: string): OpenFault => ({
  kind: 'FileDamaged',
  path,
  detail,
  backupFolder: backups.folder,
  backups: backups.list().map((backup) => backup.file),
});
