import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type PlainDate } from '#core';
import {
  type Backup,
  findExpiredBackups,
  formatBackupName,
  parseBackupName,
  sortBackups,
} from './backup-name.ts';

const day = (text: string): PlainDate => text as PlainDate;
const named = (...files: readonly string[]): Backup[] => files.flatMap((file) => parseBackupName(file) ?? []);

describe('names', () => {
  test.each([
    [formatBackupName(day('2026-11-25'), null, 1), 'levare-2026-11-25.sqlite'],
    [formatBackupName(day('2026-11-25'), null, 12), 'levare-2026-11-25-12.sqlite'],
    [formatBackupName(day('2026-11-25'), 2, 1), 'levare-2026-11-25-before-0002.sqlite'],
    [formatBackupName(day('2026-11-25'), 31, 3), 'levare-2026-11-25-before-0031-3.sqlite'],
  ])('%s', (made, expected) => expect(made).toBe(expected));

  test('are read back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40_000 }),
        fc.option(fc.integer({ min: 1, max: 9999 })),
        fc.integer({ min: 1, max: 500 }),
        (days, beforeMigration, nth) => {
          const on = addDays(day('1990-01-01'), days);
          const file = formatBackupName(on, beforeMigration, nth);
          expect(parseBackupName(file)).toEqual({ file, day: on, beforeMigration, nth });
        },
      ),
    );
  });

  test.each(
    'levare.sqlite levare-2026-02-30.sqlite levare-2026-11-25-1.sqlite levare-2026-11-25.sqlite-wal unfinished.part notes.txt levare-set-aside-2026-11-25.sqlite'.split(
      ' ',
    ),
  )('%s is none of ours', (file) => expect(parseBackupName(file)).toBeNull());
});

describe('which have had their time', () => {
  const expired = (backups: readonly Backup[]) => findExpiredBackups(backups).map((backup) => backup.file);

  test('one a day for a year: 7 days, then the last of each of 4 weeks', () => {
    // 2026-11-25 is a Wednesday (ISO week 48), so the seven days reach back to Thursday 2026-11-19.
    const year = Array.from({ length: 365 }, (_, i) =>
      formatBackupName(addDays(day('2026-11-25'), -i), null, 1),
    );
    const gone = new Set(expired(named(...year)));
    expect(year.filter((file) => !gone.has(file)).map((file) => file.slice(7, 17))).toEqual(
      '2026-11-25 2026-11-24 2026-11-23 2026-11-22 2026-11-21 2026-11-20 2026-11-19 2026-11-18 2026-11-15 2026-11-08 2026-11-01'.split(
        ' ',
      ),
    );
  });

  test('rotated day by day, a year ends with the same', () => {
    let there: readonly Backup[] = [];
    for (let i = 364; i >= 0; i--) {
      there = [...there, ...named(formatBackupName(addDays(day('2026-11-25'), -i), null, 1))];
      const gone = new Set(findExpiredBackups(there));
      there = there.filter((backup) => !gone.has(backup));
    }
    expect(sortBackups(there).map((backup) => backup.file.slice(7, 17))).toEqual(
      '2026-11-25 2026-11-24 2026-11-23 2026-11-22 2026-11-21 2026-11-20 2026-11-19 2026-11-18 2026-11-15 2026-11-08 2026-11-01'.split(
        ' ',
      ),
    );
  });

  test('many starts on one day: its last three stay, of earlier days the last', () => {
    const files = ['', '-2', '-3', '-4', '-5'];
    expect(
      expired(
        named(
          ...files.map((tail) => `levare-2026-11-25${tail}.sqlite`),
          ...files.map((tail) => `levare-2026-11-24${tail}.sqlite`),
        ),
      ),
    ).toEqual(
      [
        'levare-2026-11-25-2 levare-2026-11-25',
        'levare-2026-11-24-4 levare-2026-11-24-3 levare-2026-11-24-2 levare-2026-11-24',
      ]
        .join(' ')
        .split(' ')
        .map((name) => `${name}.sqlite`),
    );
  });

  test('the last three before a migration stay, apart from the others', () => {
    const before = [1, 2, 3, 4, 5].map((n) => formatBackupName(addDays(day('2026-01-01'), n), n, 1));
    expect(expired(named(...before, 'levare-2026-11-25.sqlite'))).toEqual([before[1], before[0]]);
  });

  test('the newest is never among them, and once rotated nothing more goes', () => {
    const backup = fc
      .tuple(
        fc.integer({ min: 0, max: 120 }),
        fc.option(fc.integer({ min: 1, max: 9 })),
        fc.integer({ min: 1, max: 4 }),
      )
      .map(([days, before, nth]) => formatBackupName(addDays(day('2026-01-01'), days), before, nth));
    fc.assert(
      fc.property(fc.uniqueArray(backup, { minLength: 1, maxLength: 60 }), (files) => {
        const backups = named(...files);
        const gone = new Set(findExpiredBackups(backups));
        expect(gone.has(sortBackups(backups)[0] as Backup)).toBe(false); // there is at least one
        expect(findExpiredBackups(backups.filter((each) => !gone.has(each)))).toEqual([]);
        expect(backups.length - gone.size).toBeLessThanOrEqual(7 + 2 + 4 + 3);
      }),
    );
  });
});
