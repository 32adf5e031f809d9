// The backups of one studio file: made online from a reader's snapshot while the studio is in use, verified, and only
// then counted, so that a damaged file never pushes good backups out.

import { chmodSync, closeSync, fsyncSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Clock, err, ok, type Result } from '#core';
import { openConnection } from '../sqlite/connection.ts';
import { makeFolder } from '../sqlite/make-folder.ts';
import { isDamage, messageOf } from '../sqlite/sqlite-error.ts';
import {
  type Backup,
  findExpiredBackups,
  formatBackupName,
  parseBackupName,
  sortBackups,
} from './backup-name.ts';
import { type FileDoubtful, verifyFile } from './verify-file.ts';

export interface Backups {
  readonly folder: string;
  /** Makes a backup now. One is made at a time; the file's name comes back. */
  make(beforeMigration: number | null): Promise<Result<string, FileDoubtful>>;
  /** Makes a backup unless there is one from today already: null then. */
  makeIfDue(): Promise<Result<string | null, FileDoubtful>>;
  /** Newest first. */
  list(): readonly Backup[];
  /** Does some other work on the backups while none is made. */
  meanwhile<R>(work: () => Promise<R>): Promise<R>;
}

/** Pages of 4 KB copied between two turns of the event loop. */
const pagesAtOnce = 2000;

/** The backups beside a studio's file, in `backups`. */
export function createBackups(path: string, clock: Clock): Backups {
  const folder = backupFolder(path);
  let last: Promise<unknown> = Promise.resolve();

  const make = (beforeMigration: number | null): Promise<Result<string, FileDoubtful>> => {
    const result = last.then(() => makeBackup(path, folder, clock, beforeMigration));
    last = result;
    return result;
  };
  return {
    folder,
    make,
    async makeIfDue() {
      const today = clock.today();
      const done = listFolder(folder).some(
        (backup) => backup.day === today && backup.beforeMigration === null,
      );
      return done ? ok(null) : await make(null);
    },
    list: () => listFolder(folder),
    meanwhile(work) {
      const result = last.then(work);
      last = result.catch(() => null); // its caller sees the failure; the next backup is made all the same
      return result;
    },
  };
}

const backupFolder = (path: string): string => join(dirname(path), 'backups');

/** The backups of the studio in a file, newest first; also when the file itself cannot be opened. */
export const listBackups = (path: string): readonly Backup[] => listFolder(backupFolder(path));

/** The backups in a folder, newest first; none when it does not exist. */
function listFolder(folder: string): readonly Backup[] {
  try {
    return sortBackups(readdirSync(folder).flatMap((file) => parseBackupName(file) ?? []));
  } catch {
    return [];
  }
}

async function makeBackup(
  path: string,
  folder: string,
  clock: Clock,
  beforeMigration: number | null,
): Promise<Result<string, FileDoubtful>> {
  const part = join(folder, 'unfinished.part');
  try {
    makeFolder(folder);
    removeDatabase(part);
    closeSync(openSync(part, 'w', 0o600));
    await copyOnline(path, part);
    const verified = verifyFile(part);
    if (!verified.ok) {
      removeDatabase(part);
      return verified;
    }
    chmodSync(part, 0o600);
    writeThrough(part);
    const file = freeName(folder, clock, beforeMigration);
    renameSync(part, join(folder, file));
    writeThrough(folder);
    for (const expired of findExpiredBackups(listFolder(folder))) rmSync(join(folder, expired.file));
    return ok(file);
  } catch (error) {
    dropUnfinished(part);
    return err({ kind: isDamage(error) ? 'damaged' : 'unreadable', detail: messageOf(error) });
  }
}

/** On a full disk it would only make things worse. */
function dropUnfinished(part: string): void {
  try {
    removeDatabase(part);
  } catch {
    // What kept the backup from being made keeps it from being cleared away too.
  }
}

/** Copies a database that may be in use; what is written meanwhile is in the copy wholly or not at all. */
export async function copyOnline(from: string, to: string): Promise<void> {
  const { handle } = openConnection(from, 'read');
  try {
    await handle.backup(to, { progress: () => pagesAtOnce });
  } finally {
    handle.close();
  }
}

/** Removes a database with what SQLite keeps beside it. */
export function removeDatabase(path: string): void {
  for (const tail of ['', '-journal', '-wal', '-shm']) rmSync(path + tail, { force: true });
}

/** Asks the disk to really have a file, or a folder's list of files. */
export function writeThrough(path: string): void {
  try {
    const file = openSync(path, 'r');
    try {
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  } catch {
    // Windows opens no folders and syncs no file opened for reading; there the rename is as safe as it gets.
  }
}

function freeName(folder: string, clock: Clock, beforeMigration: number | null): string {
  const taken = listFolder(folder)
    .filter((backup) => backup.day === clock.today() && backup.beforeMigration === beforeMigration)
    .map((backup) => backup.nth);
  return formatBackupName(clock.today(), beforeMigration, Math.max(0, ...taken) + 1);
}
