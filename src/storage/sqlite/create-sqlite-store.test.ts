import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { createTurnedClock, newStudioPath, openStudio } from '../contract/data-folder.contract.ts';
import { apply, putSample, sample } from '../contract/sample-studio.contract.ts';
import { formatOpenFault, type OpenFault } from '../open-fault.ts';
import { openConnection } from './connection.ts';
import { createSqliteStore } from './create-sqlite-store.ts';

const clock = createTurnedClock('2026-03-04');

test('what was written is there after closing and opening', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  const dump = await store.dump();
  await store.close();
  expect(readdirSync(dirname(path)).filter((file) => /wal|shm/.test(file))).toEqual([]); // folded back
  const again = await openStudio({ path, clock });
  expect(await again.dump()).toEqual(dump);
  await again.close();
});

test('the file is in WAL mode, written through at each commit, and its references are watched', async () => {
  const path = newStudioPath();
  await (await openStudio({ path, clock })).close();
  const { handle } = openConnection(path, 'write');
  const pragma = (name: string): unknown => handle.pragma(name, { simple: true });
  expect(pragma('journal_mode')).toBe('wal');
  expect(pragma('synchronous')).toBe(2); // FULL
  expect(pragma('foreign_keys')).toBe(1);
  expect(pragma('busy_timeout')).toBeGreaterThan(1000); // milliseconds
  handle.close();
});

test('what was deleted is no longer in the file', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  const data = 'TheSoundOfAChild'.repeat(5000);
  await apply(store, 'keep', (t) =>
    t.put('soundData', { id: 'sound-data:one' as never, sound: sample.sound.id, data }),
  );
  await apply(store, 'erase', (t) => t.remove('soundData', 'sound-data:one' as never));
  await store.close();
  expect(readFileSync(path).includes('TheSoundOfAChild')).toBe(false);
});

test('one program per folder; the second is told who has it, and gets in afterwards', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  const second = await createSqliteStore({ path, clock });
  expect(second).toMatchObject({ ok: false, error: { kind: 'FolderInUse', folder: dirname(path) } });
  if (!second.ok) expect(formatOpenFault(second.error)).toContain(`process ${process.pid}`);
  await apply(store, 'goes-on', (t) => t.put('group', { ...sample.group, name: 'Still here' }));
  await store.close();
  await (await openStudio({ path, clock })).close();
});

test.each([
  ['text', Buffer.from('Dear diary, this is no database, however long I go on about it. '.repeat(40))],
  ['noise', Buffer.from(Array.from({ length: 9000 }, (_, i) => (i * 7919) % 251))],
])('a file of %s is a fault that names the backups, and stays as it is', async (_, bytes) => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  await store.backUp();
  await store.close();
  writeFileSync(path, bytes);
  const opened = await createSqliteStore({ path, clock });
  expect(opened).toMatchObject({
    ok: false,
    error: { kind: 'FileDamaged', backupFolder: store.backupFolder, backups: ['levare-2026-03-04.sqlite'] },
  });
  if (!opened.ok) expect(formatOpenFault(opened.error)).toContain(store.backupFolder);
  expect(readFileSync(path)).toEqual(bytes);
});

test('an empty file beside backups is not taken for a new studio', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  await store.backUp();
  await store.close();
  writeFileSync(path, '');
  expect(await createSqliteStore({ path, clock })).toMatchObject({ error: { kind: 'FileDamaged' } });
  expect(statSync(path).size).toBe(0);
});

test('a database of something else is left as it is', async () => {
  const path = newStudioPath();
  mkdirSync(dirname(path));
  const other = new Database(path);
  other.exec('create table orders (id integer primary key)');
  other.close();
  const bytes = readFileSync(path);
  expect(await createSqliteStore({ path, clock })).toMatchObject({
    error: { kind: 'NotAStudio', tables: ['orders'] },
  });
  expect(readFileSync(path)).toEqual(bytes);
});

describe('a file that is refused at first sight is left alone, with nothing made beside it:', () => {
  const other = (path: string, mode: 'delete' | 'wal') => {
    const handle = new Database(path);
    handle.pragma(`journal_mode = ${mode}`);
    handle.exec('create table orders (id integer primary key)');
    handle.close();
  };
  test.each<[string, OpenFault['kind'], (path: string) => Promise<void> | void]>([
    ['no database', 'FileDamaged', (path) => writeFileSync(path, 'Dear diary. '.repeat(400))],
    ['that of another program', 'NotAStudio', (path) => other(path, 'delete')],
    ['that of another program, in WAL mode', 'NotAStudio', (path) => other(path, 'wal')],
    [
      'a newer studio',
      'DatabaseNewer',
      async (path) => {
        const elsewhere = newStudioPath();
        await (await openStudio({ path: elsewhere, clock })).close();
        copyFileSync(elsewhere, path);
        const { handle } = openConnection(path, 'write');
        handle.exec("insert into migration (number, name, at) values (9999, 'later', '')");
        handle.close();
      },
    ],
    [
      'an empty one beside backups',
      'FileDamaged',
      (path) => {
        writeFileSync(path, '');
        mkdirSync(join(dirname(path), 'backups'));
        writeFileSync(join(dirname(path), 'backups', 'levare-2026-03-03.sqlite'), '');
      },
    ],
  ])('%s', async (_, kind, put) => {
    const path = newStudioPath();
    mkdirSync(dirname(path));
    await put(path);
    chmodSync(path, 0o644);
    const look = () => ({
      files: readdirSync(dirname(path), { recursive: true }).toSorted(),
      bytes: readFileSync(path),
      mode: statSync(path).mode,
    });
    const before = look();
    expect(await createSqliteStore({ path, clock })).toMatchObject({ ok: false, error: { kind } });
    expect(look()).toEqual(before);
  });
});

test('a studio that a program left when it broke off is opened with all that was written', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  const dump = await store.dump();
  // As it lies there while it is open, its WAL beside it.
  const left = newStudioPath();
  mkdirSync(dirname(left));
  for (const tail of ['', '-wal']) copyFileSync(path + tail, left + tail);
  await store.close();
  const again = await openStudio({ path: left, clock });
  expect(await again.dump()).toEqual(dump);
  await again.close();
});

// Root may write everything.
test.runIf(process.platform !== 'win32' && process.getuid?.() !== 0)(
  'a studio that was copied from where nothing may be written is opened',
  async () => {
    const path = newStudioPath();
    const store = await openStudio({ path, clock });
    await putSample(store);
    await store.close();
    chmodSync(path, 0o444);
    await (await openStudio({ path, clock })).close();
    expect(statSync(path).mode & 0o777).toBe(0o600);
  },
);

test('a place where no folder can be is a fault', async () => {
  const path = newStudioPath();
  mkdirSync(dirname(path));
  writeFileSync(join(dirname(path), 'file'), '');
  const opened = await createSqliteStore({ path: join(dirname(path), 'file', 'levare.sqlite'), clock });
  expect(opened).toMatchObject({ error: { kind: 'FolderUnusable' } });
  mkdirSync(join(dirname(path), 'levare.sqlite'));
  expect(await createSqliteStore({ path, clock })).toMatchObject({ error: { kind: 'FolderUnusable' } });
});

test('a backup folder that cannot be written is told, and the studio opens all the same', async () => {
  const path = newStudioPath();
  const store = await openStudio({ path, clock });
  await putSample(store);
  await store.close();
  writeFileSync(join(dirname(path), 'backups'), 'in the way');
  const told: unknown[] = [];
  const again = await openStudio({ path, clock, onBackup: (outcome) => told.push(outcome) });
  expect(told).toMatchObject([{ ok: false, error: { kind: 'unreadable' } }]);
  expect(await again.read((r) => r.list('student'))).toEqual([sample.student]);
  await again.close();
});

test.runIf(process.platform !== 'win32')(
  'a file that others could read is for the owner alone afterwards',
  async () => {
    const path = newStudioPath();
    const store = await openStudio({ path, clock });
    await store.close();
    chmodSync(path, 0o644);
    await (await openStudio({ path, clock })).close();
    expect(statSync(path).mode & 0o777).toBe(0o600);
  },
);
