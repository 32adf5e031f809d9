// `levare restore`: lists the backups; with a name, puts that one back and sets what was there aside.

import { dirname, join } from 'node:path';
import { createSystemClock } from '#core';
import { formatRestoreFault, listBackups, restoreBackup } from '#storage';
import { studioPath } from './open-store.ts';
import { readName, readWords } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function restore(words: readonly string[]): Promise<number> {
  const read = readWords(words, { data: { type: 'string' } });
  if (!read.ok) return refuse('restore', read.error);
  const path = studioPath(read.value);
  if (!path.ok) return refuse('restore', path.error, 1);
  if (read.value.positionals.length === 0) return list(path.value);
  const backup = readName(read.value, 'backup', 'levare restore BACKUP');
  return backup.ok ? putBack(path.value, backup.value) : refuse('restore', backup.error);
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
  if (!restored.ok) return refuse('restore', formatRestoreFault(restored.error), 1);
  const { setAside } = restored.value;
  console.log(`${backup} is in place.${setAside === null ? '' : ` What was there is kept as ${setAside}.`}`);
  return 0;
}
