import { copyFileSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { ok } from '#core';
import type { Store } from '#studio';
import { createTurnedClock, newStudioPath, openStudio } from '../contract/data-folder.contract.ts';
import { apply, putSample, sample, sampleLesson } from '../contract/sample-studio.contract.ts';
import { openConnection } from '../sqlite/connection.ts';
import { listCopies } from './rewrite-copies.ts';
import { verifyFile } from './verify-file.ts';

const clock = createTurnedClock('2026-03-04');

/** Takes the word out of every lesson's note, and out of the journal; false where it is in none. */
async function eraseWord(store: Store): Promise<boolean> {
  const lessons = await store.read((r) => r.list('lesson'));
  if (!lessons.some(({ note }) => note.includes('Quillfeather'))) return false;
  await apply(store, 'erase', async (t) => {
    for (const lesson of lessons) await t.put('lesson', { ...lesson, note: '' });
    await t.rewriteJournal((change) => ({ ...change, rows: [] }));
  });
  return (await store.compact()).ok;
}

async function openWithCopies() {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  expect((await store.backUp()).ok).toBe(true); // without the word
  await apply(store, 'word', (t) =>
    t.put('lesson', sampleLesson('two', { note: 'Quillfeather '.repeat(3000) })),
  );
  expect((await store.backUp()).ok).toBe(true);
  const backups = join(dirname(path), 'backups');
  copyFileSync(
    join(backups, 'levare-2026-03-04-2.sqlite'),
    join(dirname(path), 'levare-set-aside-2026-03-01.sqlite'),
  );
  return { path, store, backups };
}

test('what is erased in the copies is in none of their bytes; one that never held it is not touched', async () => {
  const { path, store, backups } = await openWithCopies();
  expect(store.listCopies().map((copy) => [copy.path.slice(dirname(path).length + 1), copy.day])).toEqual([
    ['levare-set-aside-2026-03-01.sqlite', '2026-03-01'],
    [join('backups', 'levare-2026-03-04-2.sqlite'), '2026-03-04'],
    [join('backups', 'levare-2026-03-04.sqlite'), '2026-03-04'],
  ]);
  const holding = () => listCopies(path).filter((copy) => readFileSync(copy.path).includes('Quillfeather'));
  expect(holding()).toHaveLength(2);
  const untouched = readFileSync(join(backups, 'levare-2026-03-04.sqlite'));
  const told: number[] = [];
  expect(
    await store.rewriteCopies((copy, done) => {
      told.push(done);
      return eraseWord(copy);
    }),
  ).toEqual([]);
  expect(told).toEqual([0, 1, 2]);
  expect(holding()).toEqual([]);
  expect(readFileSync(join(backups, 'levare-2026-03-04.sqlite')).equals(untouched)).toBe(true);
  for (const copy of listCopies(path)) expect(verifyFile(copy.path)).toEqual(ok(null));
  expect(readdirSync(backups)).toHaveLength(2); // nothing unfinished is left
  if (process.platform !== 'win32')
    for (const copy of listCopies(path)) expect(statSync(copy.path).mode & 0o777).toBe(0o600);
  // The studio itself is not a copy.
  expect((await store.read((r) => r.list('lesson'))).some(({ note }) => note !== '')).toBe(true);
  await store.close();
});

test('a damaged copy stays as it is and is named; the others are seen to', async () => {
  const { path, store, backups } = await openWithCopies();
  const damaged = join(backups, 'levare-2026-03-03.sqlite');
  writeFileSync(damaged, 'this is no studio');
  const left = await store.rewriteCopies(eraseWord);
  expect(left.map((copy) => copy.path)).toEqual([damaged]);
  expect(readFileSync(damaged, 'utf8')).toBe('this is no studio');
  expect(listCopies(path).some((copy) => readFileSync(copy.path).includes('Quillfeather'))).toBe(false);
  await store.close();
});

test('work that fails leaves the copy as it was', async () => {
  const { store, backups } = await openWithCopies();
  const file = join(backups, 'levare-2026-03-04-2.sqlite');
  const before = readFileSync(file);
  const left = await store.rewriteCopies(async (copy) => {
    await apply(copy, 'half', (t) => t.remove('group', sample.group.id));
    throw new Error('the power went');
  });
  expect(left.map(({ detail }) => detail)).toEqual(Array(3).fill('the power went'));
  expect(readFileSync(file).equals(before)).toBe(true);
  await store.close();
});

test('a file that could not be compacted after an erasure is compacted when it is opened next', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  await apply(store, 'erase', (t) => t.rewriteJournal((change) => change));
  await store.close();
  const noted = () => {
    const { handle } = openConnection(path, 'read');
    const version = handle.pragma('user_version', { simple: true });
    handle.close();
    return version;
  };
  expect(noted()).toBe(1);
  await (await openStudio({ path, clock })).close();
  expect(noted()).toBe(0);
  // What was only imagined is not noted.
  const again = await openStudio({ path, clock });
  await again.imagine((t) => t.rewriteJournal((change) => change));
  await again.close();
  expect(noted()).toBe(0);
});

test('copies of another studio beside it, and folders that are not there, are none', () => {
  const path = newStudioPath();
  expect(listCopies(path)).toEqual([]);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(join(dirname(path), 'other-set-aside-2026-03-01.sqlite'), '');
  expect(listCopies(path)).toEqual([]);
});
