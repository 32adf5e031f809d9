// Takes that were recorded in practice, for the lesson that set it.

import { sql } from 'kysely';
import type { Migration } from './migration.ts';

export const practiceTakes: Migration = {
  number: 4,
  name: 'practice-takes',
  async apply(database, dialect) {
    await sql`alter table take add column practice_of ${sql.raw(dialect.columnType.text)}`.execute(database);
  },
};
