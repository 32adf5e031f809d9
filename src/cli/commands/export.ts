// `levare export FILE`: the whole studio and its history in one file of JSON; without its history, what was removed is in
// it no more.

import { rename, rm, writeFile } from 'node:fs/promises';
import { findMissingStudio, openStore } from './open-store.ts';
import { couldNotWrite } from './put-bytes.ts';
import { readName, readWords } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function exportStudio(words: readonly string[]): Promise<number> {
  const read = readWords(words, {
    data: { type: 'string' },
    'without-changes': { type: 'boolean', default: false },
  });
  if (!read.ok) return refuse('export', read.error);
  const named = readName(read.value, 'file', 'levare export my-studio.json');
  if (!named.ok) return refuse('export', named.error);
  const file = named.value;
  const missing = findMissingStudio(read.value);
  if (missing !== null) return refuse('export', missing, 1);
  const store = await openStore(read.value);
  if (!store.ok) return refuse('export', store.error, 1);
  try {
    const dump = await store.value.dump();
    const kept = read.value.values['without-changes'] === true ? { ...dump, changes: [] } : dump;
    await writeFile(`${file}.part`, JSON.stringify(kept), { mode: 0o600 });
    await rename(`${file}.part`, file);
  } catch (fault) {
    await rm(`${file}.part`, { force: true });
    return refuse('export', couldNotWrite(file, fault), 1);
  } finally {
    await store.value.close();
  }
  console.log(`The studio is in ${file}. It holds personal data; keep it where only you can read it.`);
  return 0;
}
