// Takes of students, their sounds apart, consent to record them, levels that rest on a take, and when a level was noted.

import { sql } from 'kysely';
import { createIndex, createTable } from './create-table.ts';
import type { Migration } from './migration.ts';

export const takes: Migration = {
  number: 2,
  name: 'takes',
  async apply(database, dialect) {
    for (const [name, columns] of Object.entries(tables)) await createTable(database, dialect, name, columns);
    await sql`alter table observation add column take ${sql.raw(dialect.columnType.text)}
      references take (id) deferrable initially deferred`.execute(database);
    await sql`alter table observation add column noted_at ${sql.raw(dialect.columnType.text)}`.execute(
      database,
    );
    for (const [table, ...columns] of indexes) await createIndex(database, table, columns);
  },
};

const tables: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  consent: {
    id: 'text key',
    student: 'text references student',
    given_by: 'text',
    relation: 'text',
    given_on: 'text',
    note: 'text',
    withdrawn_on: 'text null',
  },
  sound: { id: 'text key', type: 'text', bytes: 'integer', unheld_since: 'text null' },
  sound_data: { id: 'text key', sound: 'text references sound', data: 'text' },
  take: {
    id: 'text key',
    student: 'text references student',
    date: 'text',
    kept_at: 'text',
    title: 'text',
    taken_in: 'text null',
    played_for: 'json null',
    instrument: 'text null',
    context: 'json',
    heard: 'json',
    evidence: 'json',
    note: 'text',
    sound: 'text null references sound',
  },
};

const indexes: readonly (readonly [string, ...string[]])[] = [
  ['consent', 'student'],
  ['sound', 'unheld_since'],
  ['sound_data', 'sound'],
  ['take', 'student', 'date'],
  ['take', 'sound'],
  ['observation', 'take'],
];
