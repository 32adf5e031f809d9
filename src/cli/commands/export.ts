// `levare export FILE`: the whole studio and its history in one file of JSON; without its history, what was removed is in
// it no more.

import { rename, rm, writeFile } from 'node:fs/promises';
import { findMissingStudio, openStore } from './open-store.ts';
import { findSurplus, readWords } from './read-words.ts';

export async function exportStudio(words: readonly string[]): Promise<number> {
  const read = readWords(words, {
    data: { type: 'string' },
    'without-changes': { type: 'boolean', default: false },
  });
  const file = read.ok ? read.value.positionals[0] : undefined;
  if (!read.ok || file === undefined) {
    console.error(
      `levare export: ${read.ok ? 'name the file to write: levare export my-studio.json' : read.error}`,
    );
    return 2;
  }
  const surplus = findSurplus(read.value, 'file');
  if (surplus !== null) {
    console.error(`levare export: ${surplus}`);
    return 2;
  }
  const missing = findMissingStudio(read.value);
  if (missing !== null) {
    console.error(`levare export: ${missing}`);
    return 1;
  }
  const store = await openStore(read.value);
  if (!store.ok) {
    console.error(`levare export: ${store.error}`);
    return 1;
  }
  try {
    const dump = await store.value.dump();
    const kept = read.value.values['without-changes'] === true ? { ...dump, changes: [] } : dump;
    await writeFile(`${file}.part`, JSON.stringify(kept), { mode: 0o600 });
    await rename(`${file}.part`, file);
  } catch (fault) {
    await rm(`${file}.part`, { force: true });
    console.error(
      `levare export: ${file} could not be written: ${fault instanceof Error ? fault.message : String(fault)}`,
    );
    return 1;
  } finally {
    await store.value.close();
  }
  console.log(`The studio is in ${file}. It holds personal data; keep it where only you can read it.`);
  return 0;
}
