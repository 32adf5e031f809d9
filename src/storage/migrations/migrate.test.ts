import { readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { createTurnedClock, newStudioPath, openStudio } from '../contract/data-folder.contract.ts';
import { putSample, sample } from '../contract/sample-studio.contract.ts';
import { sqliteDialect } from '../dialect/dialect.ts';
import { formatOpenFault } from '../open-fault.ts';
import { tableNames, tables } from '../schema/tables.ts';
import { openConnection } from '../sqlite/connection.ts';
import { createSqliteStore } from '../sqlite/create-sqlite-store.ts';
import { migrations } from './list.ts';
import { migrate, readDatabaseState } from './migrate.ts';
import type { Migration } from './migration.ts';

const clock = createTurnedClock('2026-03-04');
const next: Migration = {
  number: migrations.length + 1,
  name: 'mood',
  apply: async (database) =>
    void (await sql`alter table student add column mood text not null default 'calm'`.execute(database)),
};
/** The numbers of the released ones, as the database keeps them. */
const released = migrations.map(({ number }) => ({ number }));
const failing: Migration = {
  number: migrations.length + 2,
  name: 'failing',
  async apply(database) {
    await sql`create table half_done (id integer primary key)`.execute(database);
    throw new Error('a bug in a migration');
  },
};

describe('the list', () => {
  test('brings a studio of the first release to where takes are kept, with its levels as they were', async () => {
    const { database, handle } = openConnection(':memory:', 'write');
    await migrate(database, sqliteDialect, migrations.slice(0, 1), clock.instant());
    handle.pragma('foreign_keys = off');
    handle
      .prepare(
        "insert into observation values ('observation:a', 'course:a', null, null, 'skill:a', 2, '2026-03-04', '')",
      )
      .run();
    handle.pragma('foreign_keys = on');
    await migrate(database, sqliteDialect, migrations, clock.instant());
    expect(handle.prepare('select level, take from observation').all()).toEqual([{ level: 2, take: null }]);
    await database.destroy();
  });

  test('brings lessons of before to where absences are kept: nobody was away', async () => {
    const { database, handle } = openConnection(':memory:', 'write');
    await migrate(database, sqliteDialect, migrations.slice(0, 4), clock.instant());
    handle.pragma('foreign_keys = off');
    handle
      .prepare(
        `insert into lesson values ('lesson:a', 'course:a', '2026-03-04', '16:00', 30, 'taught', '', null, null, 0, '', '', 0, '[]')`,
      )
      .run();
    handle.pragma('foreign_keys = on');
    await migrate(database, sqliteDialect, migrations, clock.instant());
    expect(handle.prepare('select status, absent from lesson').all()).toEqual([
      { status: 'taught', absent: null },
    ]);
    await database.destroy();
  });

  test('is numbered from 1 without gaps', () => {
    expect(migrations.map((migration) => migration.number)).toEqual(migrations.map((_, i) => i + 1));
  });

  test('leads to the tables as they are described', async () => {
    const { database, handle } = openConnection(':memory:', 'write');
    await migrate(database, sqliteDialect, migrations, clock.instant());
    for (const table of tableNames) {
      const { name, columns } = tables[table];
      const there = handle.pragma(`table_info("${name}")`) as {
        name: string;
        type: string;
        notnull: number;
      }[];
      expect(
        there.map((c) => `${c.name} ${c.type.toLowerCase()} ${c.notnull}`),
        name,
      ).toEqual(columns.map((c) => `${c.name} ${sqliteDialect.columnType[c.kind]} ${c.nullable ? 0 : 1}`));
    }
    const all = handle.prepare("select name from sqlite_schema where type = 'table'").pluck().all();
    expect(all.toSorted()).toEqual(
      [...tableNames.map((table) => tables[table].name), 'change', 'changed_row', 'migration'].toSorted(),
    );
    await database.destroy();
  });
});

describe('an existing studio', () => {
  const prepare = async (): Promise<string> => {
    const path = newStudioPath();
    const store = await openStudio({ path, clock });
    await putSample(store);
    await store.close();
    return path;
  };
  const look = (path: string, query: string): unknown[] => {
    const handle = new Database(path, { readonly: true });
    const rows = handle.prepare(query).all();
    handle.close();
    return rows;
  };

  test('is backed up, then brought up to date, once', async () => {
    const path = await prepare();
    const store = await openStudio({ path, clock, migrations: [...migrations, next] });
    expect(await store.read((r) => r.list('student'))).toEqual([sample.student]);
    const file = `levare-2026-03-04-before-000${next.number}.sqlite`;
    expect(store.listBackups().map((backup) => backup.file)).toEqual([file]);
    await store.close();
    const backup = join(store.backupFolder, file);
    expect(look(backup, 'select number from migration order by number')).toEqual(released);
    expect(look(path, 'select number, name, at from migration order by number')).toEqual([
      { number: 1, name: 'first-tables', at: '2026-03-04T09:00:00.000Z' },
      { number: 2, name: 'takes', at: '2026-03-04T09:00:00.000Z' },
      { number: 3, name: 'lesson-materials', at: '2026-03-04T09:00:00.000Z' },
      { number: 4, name: 'practice-takes', at: '2026-03-04T09:00:00.000Z' },
      { number: 5, name: 'absences', at: '2026-03-04T09:00:00.000Z' },
      { number: next.number, name: 'mood', at: '2026-03-04T09:00:00.000Z' },
    ]);
    expect(look(path, 'select mood from student')).toEqual([{ mood: 'calm' }]);
    await (await openStudio({ path, clock, migrations: [...migrations, next] })).close();
    expect(look(path, 'select count(*) as n from migration')).toEqual([{ n: next.number }]);
  });

  test('is as it was when a migration fails, the earlier ones of that start included', async () => {
    const path = await prepare();
    await expect(
      createSqliteStore({ path, clock, migrations: [...migrations, next, failing] }),
    ).rejects.toThrow('a bug in a migration');
    expect(look(path, 'select number from migration order by number')).toEqual(released);
    expect(look(path, "select name from sqlite_schema where name = 'half_done'")).toEqual([]);
    const store = await openStudio({ path, clock }); // the lock was let go of
    expect(await store.read((r) => r.list('student'))).toEqual([sample.student]);
    await store.close();
  });

  test('is not migrated without its backup', async () => {
    const path = await prepare();
    writeFileSync(join(dirname(path), 'backups'), 'in the way');
    const opened = await createSqliteStore({ path, clock, migrations: [...migrations, next] });
    expect(opened).toMatchObject({ error: { kind: 'BackupFailed' } });
    expect(look(path, 'select number from migration order by number')).toEqual(released);
  });

  test('from a newer Levare is refused and left alone', async () => {
    const path = await prepare();
    await (await openStudio({ path, clock, migrations: [...migrations, next] })).close();
    const before = readdirSync(join(dirname(path), 'backups'));
    const opened = await createSqliteStore({ path, clock });
    expect(opened).toMatchObject({
      error: { kind: 'DatabaseNewer', path, found: next.number, known: migrations.length },
    });
    if (!opened.ok)
      expect(formatOpenFault(opened.error)).toMatch(
        new RegExp(`newer Levare.*version ${next.number}.*knows ${migrations.length}`),
      );
    expect(readdirSync(join(dirname(path), 'backups'))).toEqual(before);
  });

  test('tells its state without being touched', async () => {
    const { database } = openConnection(await prepare(), 'read');
    expect(await readDatabaseState(database, sqliteDialect, [...migrations, next])).toEqual({
      ok: true,
      value: { version: migrations.length, pending: [next] },
    });
    await database.destroy();
  });
});
