// One program per data folder. The lock is SQLite's own, held on a small file for as long as the store is open: the
// operating system lets go of it when the program ends, however it ends, so there is never a stale one.

import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { err, ok, type Result } from '#core';
import type { OpenFault } from '../open-fault.ts';
import { isBusy, messageOf } from './sqlite-error.ts';

export interface FolderLock {
  release(): void;
}

/** Takes the folder for this program. `at` is an ISO instant, told to whoever is refused. */
export function lockFolder(folder: string, at: string): Result<FolderLock, OpenFault> {
  const path = join(folder, 'levare.lock');
  const holderPath = join(folder, 'levare.lock.txt');
  try {
    writeFileSync(path, '', { flag: 'a', mode: 0o600 });
    const handle = new Database(path, { timeout: 0 });
    try {
      handle.exec('begin exclusive');
      writeFileSync(holderPath, `process ${process.pid} on ${hostname()}, since ${at}`, { mode: 0o600 });
    } catch (error) {
      handle.close();
      throw error;
    }
    return ok({
      release() {
        rmSync(holderPath, { force: true });
        handle.close();
      },
    });
  } catch (error) {
    return isBusy(error)
      ? err({ kind: 'FolderInUse', folder, holder: readHolder(holderPath) })
      : err({ kind: 'FolderUnusable', path: folder, detail: messageOf(error) });
  }
}

function readHolder(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}
