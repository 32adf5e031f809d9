import { copyFileSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ok } from '#core';
import { createTurnedClock, newStudioPath, openStudio } from '../contract/data-folder.contract.ts';
import { apply, putSample, sample, sampleLesson } from '../contract/sample-studio.contract.ts';
import { createSqliteStore } from '../sqlite/create-sqlite-store.ts';
import { restoreBackup } from './restore-backup.ts';
import { formatRestoreFault } from './restore-fault.ts';
import { verifyFile } from './verify-file.ts';

describe('backups', () => {
  test('a new studio has none; each start makes one, verified, for the owner alone', async () => {
    const path = newStudioPath();
    const clock = createTurnedClock('2026-03-04');
    const told: unknown[] = [];
    for (let start = 0; start < 3; start++) {
      const store = await openStudio({ path, clock, onBackup: (outcome) => told.push(outcome) });
      if (start === 0) await putSample(store);
      await store.close();
    }
    const folder = join(dirname(path), 'backups');
    expect(readdirSync(folder).toSorted()).toEqual([
      'levare-2026-03-04-2.sqlite',
      'levare-2026-03-04.sqlite',
    ]);
    expect(told).toEqual([ok('levare-2026-03-04.sqlite'), ok('levare-2026-03-04-2.sqlite')]);
    for (const file of readdirSync(folder)) expect(verifyFile(join(folder, file))).toEqual(ok(null));
    if (process.platform !== 'win32') {
      expect(statSync(dirname(path)).mode & 0o777).toBe(0o700);
      expect(statSync(folder).mode & 0o777).toBe(0o700);
      expect(statSync(path).mode & 0o777).toBe(0o600);
      expect(statSync(join(folder, 'levare-2026-03-04.sqlite')).mode & 0o777).toBe(0o600);
    }
  });

  test('a new day makes one when asked, once, and rotation follows', async () => {
    const path = newStudioPath();
    const clock = createTurnedClock('2026-03-04');
    const store = await openStudio({ path, clock });
    await putSample(store);
    expect(await store.backUpIfDue()).toEqual(ok('levare-2026-03-04.sqlite'));
    expect(await store.backUpIfDue()).toEqual(ok(null));
    for (let day = 5; day <= 14; day++) {
      clock.day = `2026-03-${String(day).padStart(2, '0')}` as typeof clock.day;
      expect((await store.backUpIfDue()).ok).toBe(true);
    }
    // Seven days, and before them the last of its week: Saturday 2026-03-07 (ISO week 10).
    expect(store.listBackups().map((backup) => backup.day.slice(8))).toEqual(
      '14 13 12 11 10 09 08 07'
        .split(' ')
        .filter((day) => day !== '07')
        .concat('07'),
    );
    await store.close();
  });

  test('a backup made while changes are written holds a whole number of changes', async () => {
    const path = newStudioPath();
    const clock = createTurnedClock('2026-03-04');
    const store = await openStudio({ path, clock });
    await putSample(store);
    const writing = (async () => {
      for (let i = 1; i <= 60; i++)
        await apply(store, `step-${i}`, async (t) => {
          await t.put('course', { ...sample.course, revision: i });
          for (let k = 0; k < 40; k++)
            await t.put('lesson', sampleLesson(`l${k}`, { minutes: i, note: 'x'.repeat(500) }));
        });
    })();
    const made: string[] = [];
    for (let i = 0; i < 6; i++) {
      const backup = await store.backUp();
      if (backup.ok) {
        made.push(backup.value);
        copyFileSync(join(store.backupFolder, backup.value), `${path}.copy-${i}`); // before rotation takes it
      }
    }
    await writing;
    await store.close();
    expect(made).toHaveLength(6);
    for (let i = 0; i < 6; i++) {
      const copied = join(dirname(path), `copy-${i}`, 'levare.sqlite');
      mkdirSync(dirname(copied));
      copyFileSync(`${path}.copy-${i}`, copied);
      const copy = await openStudio({ path: copied, clock });
      const { tables, changes } = await copy.dump();
      const revision = tables.course[0]?.revision ?? -1;
      expect(changes).toHaveLength(revision + 1);
      // the sample's own lesson has minutes too
      const written = tables.lesson.filter((l) => l.note.length === 500);
      expect(written.filter((l) => l.minutes === revision)).toHaveLength(revision === 0 ? 0 : 40);
      await copy.close();
    }
  });

  test('a damaged studio is no backup, and pushes no good one out', async () => {
    const path = newStudioPath();
    const clock = createTurnedClock('2026-03-04');
    const store = await openStudio({ path, clock });
    await putSample(store);
    await store.backUp();
    const before = readdirSync(store.backupFolder);
    await store.close();
    const bytes = readFileSync(path);
    bytes.fill(0xa5, 4096 * 6, 4096 * 9);
    writeFileSync(path, bytes);
    expect(readdirSync(join(dirname(path), 'backups'))).toEqual(before);
    const opened = await createSqliteStore({ path, clock });
    expect(opened).toMatchObject({ ok: false, error: { kind: 'FileDamaged', backups: before } });
    expect(readdirSync(join(dirname(path), 'backups'))).toEqual(before);
  });
});

describe('restoring', () => {
  const prepare = async () => {
    const path = newStudioPath();
    const clock = createTurnedClock('2026-03-04');
    const store = await openStudio({ path, clock });
    await putSample(store);
    const backup = await store.backUp();
    const then = await store.dump();
    await apply(store, 'mistake', async (t) => {
      await t.remove('lesson', sample.lesson.id);
      await t.remove('group', sample.group.id);
    });
    const now = await store.dump();
    await store.close();
    return { path, clock, backup: backup.ok ? backup.value : '', then, now };
  };

  test('brings back the backup and sets aside what was there', async () => {
    const { path, clock, backup, then, now } = await prepare();
    const restored = await restoreBackup({ path, backup, clock });
    const aside = join(dirname(path), 'levare-set-aside-2026-03-04.sqlite');
    expect(restored).toEqual(ok({ setAside: aside }));
    const store = await openStudio({ path, clock });
    expect(await store.dump()).toEqual(then);
    await store.close();
    // And the other way: what was set aside is a studio like any other.
    expect(await restoreBackup({ path, backup: aside, clock })).toMatchObject({ ok: true });
    const again = await openStudio({ path, clock });
    expect(await again.dump()).toEqual(now);
    await again.close();
    expect(readdirSync(dirname(path)).filter((file) => file.includes('restoring'))).toEqual([]);
  });

  test('over a damaged file, an empty one, or none', async () => {
    const { path, clock, backup, then } = await prepare();
    for (const bytes of [
      Buffer.from('this is not a database at all, but long enough to be taken for one'),
      Buffer.alloc(0),
    ]) {
      writeFileSync(path, bytes);
      expect(await restoreBackup({ path, backup, clock })).toMatchObject({ ok: true });
      const store = await openStudio({ path, clock });
      expect(await store.dump()).toEqual(then);
      await store.close();
    }
  });

  test('into a folder that is not there yet, as on another machine', async () => {
    const { path, clock, backup, then } = await prepare();
    const elsewhere = join(dirname(path), 'another', 'studio.sqlite');
    const file = join(dirname(path), 'backups', backup);
    expect(await restoreBackup({ path: elsewhere, backup: file, clock })).toEqual({
      ok: true,
      value: { setAside: null },
    });
    const store = await openStudio({ path: elsewhere, clock });
    expect(await store.dump()).toEqual(then);
    await store.close();
    // A folder is no backup.
    for (const folder of ['', dirname(path)])
      expect(await restoreBackup({ path, backup: folder, clock })).toMatchObject({
        error: { kind: 'NoSuchBackup' },
      });
  });

  test('of what is no backup makes nothing, neither a folder nor anything in one', async () => {
    const { path, clock } = await prepare();
    const spoilt = join(dirname(path), 'spoilt.sqlite');
    writeFileSync(spoilt, 'Dear diary, this is no database. '.repeat(40));
    const empty = join(dirname(path), 'empty');
    mkdirSync(empty);
    const before = readdirSync(dirname(path)).toSorted();
    for (const folder of [join(dirname(path), 'not', 'there'), empty])
      for (const [backup, kind] of [
        [spoilt, 'BackupUnusable'],
        ['no.sqlite', 'NoSuchBackup'],
      ] as const) {
        const restored = await restoreBackup({ path: join(folder, 'studio.sqlite'), backup, clock });
        expect(restored).toMatchObject({ error: { kind } });
        if (!restored.ok) expect(formatRestoreFault(restored.error)).toContain('Nothing was changed');
      }
    expect(readdirSync(dirname(path)).toSorted()).toEqual(before);
    expect(readdirSync(empty)).toEqual([]);
  });

  test('clears away what a restore left that was killed', async () => {
    const { path, clock, backup } = await prepare();
    mkdirSync(`${path}.restoring-1`);
    writeFileSync(join(`${path}.restoring-1`, 'studio.sqlite'), 'half of a backup');
    expect(await restoreBackup({ path, backup, clock })).toMatchObject({ ok: true });
    expect(readdirSync(dirname(path)).filter((file) => file.includes('restoring'))).toEqual([]);
  });

  test('not while the studio is open, and not from what is no studio', async () => {
    const { path, clock, backup, now } = await prepare();
    const store = await openStudio({ path, clock });
    expect(await restoreBackup({ path, backup, clock })).toMatchObject({ error: { kind: 'FolderInUse' } });
    expect(await store.dump()).toEqual(now);
    await store.close();
    const missing = await restoreBackup({ path, backup: 'levare-1999-01-01.sqlite', clock });
    expect(missing).toMatchObject({ error: { kind: 'NoSuchBackup' } });
    if (!missing.ok) expect(formatRestoreFault(missing.error)).toContain(join(dirname(path), 'backups'));
    const spoilt = join(dirname(path), 'spoilt.sqlite');
    const bytes = readFileSync(join(dirname(path), 'backups', backup));
    bytes.fill(0xa5, 4096 * 6, 4096 * 9);
    writeFileSync(spoilt, bytes);
    expect(await restoreBackup({ path, backup: spoilt, clock })).toMatchObject({
      error: { kind: 'BackupUnusable' },
    });
    writeFileSync(spoilt, '');
    expect(await restoreBackup({ path, backup: spoilt, clock })).toMatchObject({
      error: { kind: 'BackupUnusable' },
    });
    const reopened = await openStudio({ path, clock });
    expect(await reopened.dump()).toEqual(now);
    await reopened.close();
  });
});
