// `levare import FILE`: reads an exported studio into an empty one.

import { explainTrouble, parseDump } from '#storage';
import type { Store } from '#studio';
import { openStore } from './open-store.ts';
import { readNamedFile } from './read-file.ts';
import { readName, readWords } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function importStudio(words: readonly string[]): Promise<number> {
  const read = readWords(words, { data: { type: 'string' } });
  if (!read.ok) return refuse('import', read.error);
  const file = readName(read.value, 'file', 'levare import my-studio.json');
  if (!file.ok) return refuse('import', file.error);
  const text = await readNamedFile(file.value);
  if (!text.ok) return refuse('import', text.error);
  const dump = parseDump(text.value);
  if (!dump.ok) return refuse('import', `${file.value}: ${dump.error}`);
  const store = await openStore(read.value);
  if (!store.ok) return refuse('import', store.error, 1);
  let loaded: Awaited<ReturnType<Store['load']>>;
  try {
    loaded = await store.value.load(dump.value);
  } catch (error) {
    const trouble = explainTrouble(error);
    if (trouble === null) throw error;
    return refuse('import', trouble, 1);
  } finally {
    await store.value.close();
  }
  if (!loaded.ok)
    return refuse(
      'import',
      `this studio is not empty (${loaded.error.rows} rows). Name an empty folder: levare import ${file.value} --data ./new-studio`,
      1,
    );
  console.log('The studio is here, with its history.');
  return 0;
}
