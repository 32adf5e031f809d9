// Members of a group who were not there in a lesson of it.

import { sql } from 'kysely';
import type { Migration } from './migration.ts';

export const absences: Migration = {
  number: 5,
  name: 'absences',
  async apply(database, dialect) {
    await sql`alter table lesson add column absent ${sql.raw(dialect.columnType.json)}`.execute(database);
  },
};
