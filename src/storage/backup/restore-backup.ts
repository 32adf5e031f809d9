// Puts a backup in the place of a studio's file. What was there is set aside, never thrown away, and at every moment
// there is a whole file in place.

import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Clock, err, ok, type Result } from '#core';
import { migrations } from '../migrations/list.ts';
import { openConnection } from '../sqlite/connection.ts';
import { type FolderLock, lockFolder } from '../sqlite/folder-lock.ts';
import { inspectFile } from '../sqlite/inspect-file.ts';
import { isFolder, makeFolder } from '../sqlite/make-folder.ts';
import { messageOf } from '../sqlite/sqlite-error.ts';
import { writeThrough } from './backups.ts';
import type { RestoreFault } from './restore-fault.ts';
import { verifyFile } from './verify-file.ts';

export interface Restored {
  /** The file that holds what was there before, or null when nothing was. */
  readonly setAside: string | null;
}

/**
 * Restores a backup while no program has the studio open. `backup` is a name in the backup folder or a path to any
 * backup file. Until the backup has been checked nothing is made but a copy of it, which is cleared away.
 */
export async function restoreBackup({
  path,
  backup,
  clock,
}: {
  readonly path: string;
  readonly backup: string;
  readonly clock: Clock;
}): Promise<Result<Restored, RestoreFault>> {
  const folder = join(dirname(path), 'backups');
  const source = [join(folder, backup), backup].find(isFile);
  if (source === undefined) return err({ kind: 'NoSuchBackup', backup, folder });
  const beginning = `${basename(path)}.restoring-`;
  let checked: string | null = null;
  let lock: FolderLock | null = null;
  try {
    // On another machine the studio's folder is not there yet. Nothing is locked yet either, so this place is for us alone.
    checked = mkdtempSync(join(nearestFolder(dirname(path)), beginning));
    const fresh = join(checked, basename(path));
    copyFileSync(source, fresh);
    chmodSync(fresh, 0o600);
    const verified = verifyFile(fresh);
    if (!verified.ok) return err({ kind: 'BackupUnusable', backup, detail: verified.error.detail });
    const state = await inspectFile(fresh, migrations);
    if (!state.ok) return err({ path: source, ...state.error });
    if (state.value.version === 0)
      return err({ kind: 'BackupUnusable', backup, detail: 'it holds no studio' });
    writeThrough(fresh);
    makeFolder(dirname(path));
    const locked = lockFolder(dirname(path), clock.instant());
    if (!locked.ok) return locked;
    lock = locked.value;
    // What a restore left that was killed.
    for (const file of readdirSync(dirname(path)).map((name) => join(dirname(path), name)))
      if (basename(file).startsWith(beginning) && file !== checked) rmSync(file, { recursive: true });
    const setAside = setCurrentAside(path, clock);
    renameSync(fresh, path);
    writeThrough(dirname(path));
    return ok({ setAside });
  } catch (error) {
    return err({ kind: 'FolderUnusable', path, detail: messageOf(error) });
  } finally {
    if (checked !== null) rmSync(checked, { recursive: true, force: true });
    lock?.release();
  }
}

/** A folder itself, or the nearest above it that is there: on the same disk as what will be made. */
const nearestFolder = (folder: string): string =>
  isFolder(folder) || dirname(folder) === folder ? folder : nearestFolder(dirname(folder));

const isFile = (path: string) => statSync(path, { throwIfNoEntry: false })?.isFile() === true;

/** Copies what is in place to a free name beside it; the copy's path, or null when nothing is in place. */
function setCurrentAside(path: string, clock: Clock): string | null {
  if (!existsSync(path)) return null;
  try {
    openConnection(path, 'write').handle.close(); // folds the WAL back into the file
  } catch {
    // Damaged: it is set aside as it is, with what lies beside it.
  }
  const aside = freeAside(path, clock);
  for (const tail of ['', '-wal']) if (existsSync(path + tail)) copyFileSync(path + tail, aside + tail);
  writeThrough(aside);
  for (const tail of ['-wal', '-shm']) rmSync(path + tail, { force: true });
  return aside;
}

function freeAside(path: string, clock: Clock): string {
  const stem = join(dirname(path), `${basename(path, '.sqlite')}-set-aside-${clock.today()}`);
  for (let nth = 1; ; nth++) {
    const candidate = nth === 1 ? `${stem}.sqlite` : `${stem}-${nth}.sqlite`;
    if (!existsSync(candidate)) return candidate;
  }
}
