// `levare restore`: lists the backups; with a name, puts that one back and sets what was there aside.

import { dirname, join } from 'node:path';
import { createSystemClock } from '#core';
import { formatRestoreFault, listBackups, restoreBackup } from '#storage';
import { studioPath } from './open-store.ts';
import { findSurplus, readWords } from './read-words.ts';

export async function restore(words: readonly string[]): Promise<number> {
  const read = readWords(words, { data: { type: 'string' } });
  if (!read.ok) {
    console.error(`levare restore: ${read.error}`);
    return 2;
  }
  const path = studioPath(read.value);
  if (!path.ok) {
    console.error(`levare restore: ${path.error}`);
    return 2;
  }
  const surplus = findSurplus(read.value, 'backup');
  if (surplus !== null) {
    console.error(`levare restore: ${surplus}`);
    return 2;
  }
  const backup = read.value.positionals[0];
  return backup === undefined ? list(path.value) : putBack(path.value, backup);
}

function list(path: string): number {
  const backups = listBackups(path);
  console.log(
    backups.length === 0
      ? `There are no backups in ${join(dirname(path), 'backups')} yet.`
      : backups.map((b) => b.file).join('\n'),
  );
  return 0;
}

async function putBack(path: string, backup: string): Promise<number> {
  const restored = await restoreBackup({ path, backup, clock: createSystemClock() });
  if (!restored.ok) {
    console.error(`levare restore: ${formatRestoreFault(restored.error)}`);
    return 1;
  }
  const { setAside } = restored.value;
  console.log(`${backup} is in place.${setAside === null ? '' : ` What was there is kept as ${setAside}.`}`);
  return 0;
}
