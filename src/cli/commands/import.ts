// `levare import FILE`: reads an exported studio into an empty one.

import { explainTrouble, parseDump } from '#storage';
import type { Store } from '#studio';
import { openStore } from './open-store.ts';
import { readNamedFile } from './read-file.ts';
import { findSurplus, readWords } from './read-words.ts';

export async function importStudio(words: readonly string[]): Promise<number> {
  const read = readWords(words, { data: { type: 'string' } });
  const file = read.ok ? read.value.positionals[0] : undefined;
  if (!read.ok || file === undefined) {
    console.error(
      `levare import: ${read.ok ? 'name the file to read: levare import my-studio.json' : read.error}`,
    );
    return 2;
  }
  const surplus = findSurplus(read.value, 'file');
  if (surplus !== null) {
    console.error(`levare import: ${surplus}`);
    return 2;
  }
  const text = await readNamedFile(file);
  const dump = text.ok ? parseDump(text.value) : text;
  if (!dump.ok) {
    console.error(`levare import: ${dump.error}`);
    return 2;
  }
  const store = await openStore(read.value);
  if (!store.ok) {
    console.error(`levare import: ${store.error}`);
    return 1;
  }
  let loaded: Awaited<ReturnType<Store['load']>>;
  try {
    loaded = await store.value.load(dump.value);
  } catch (error) {
    const trouble = explainTrouble(error);
    if (trouble === null) throw error;
    console.error(`levare import: ${trouble}`);
    return 1;
  } finally {
    await store.value.close();
  }
  if (!loaded.ok) {
    console.error(
      `levare import: this studio is not empty (${loaded.error.rows} rows). Name an empty folder: levare import ${file} --data ./new-studio`,
    );
    return 1;
  }
  console.log('The studio is here, with its history.');
  return 0;
}
