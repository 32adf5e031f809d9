// Everything in which the two databases differ, as named capabilities. The rest of this module asks for a capability
// and never for the database's name.

import type { ColumnKind } from '../schema/column.ts';

export interface Dialect {
  /** For messages. */
  readonly name: string;
  readonly columnType: { readonly [K in ColumnKind]: string };
  /** Appended to `create table`. */
  readonly tableSuffix: string;
  /** Lists the tables there are, as `name`. */
  readonly listTables: string;
  /** Statements that open a change: from here on no other change can begin, so changes follow one another. */
  readonly beginChange: readonly string[];
  /** Statements that open a reader's snapshot. */
  readonly beginRead: readonly string[];
  /** Statements that open the transaction of all pending migrations, so that only one program migrates. */
  readonly beginMigration: readonly string[];
  /**
   * Copies every table before a migration, in the migration's own transaction; null where the studio is a file, which is
   * backed up whole.
   */
  copyBeforeMigration(number: number): string | null;
  /** Notes, in the same transaction, that the file is to be compacted; null where that is not asked at the next opening. */
  readonly noteUncompacted: string | null;
  /** How often a change is tried when the database itself asks to try again. */
  readonly attempts: number;
  /** Whether an error is such a request. */
  isRetryWanted(error: unknown): boolean;
  /** Whether an error says that rows refer to rows that are not there. */
  isReferenceBroken(error: unknown): boolean;
  /** Lists broken references inside the failed transaction, for the message; null where the error names them itself. */
  readonly findBrokenReferences: string | null;
}

export const sqliteDialect: Dialect = {
  name: 'SQLite',
  columnType: { text: 'text', integer: 'integer', real: 'real', boolean: 'integer', json: 'text' },
  tableSuffix: 'strict',
  listTables: "select name from sqlite_schema where type = 'table' and name not like 'sqlite^_%' escape '^'",
  beginChange: ['begin immediate'],
  beginRead: ['begin'],
  beginMigration: ['begin immediate'],
  copyBeforeMigration: () => null,
  noteUncompacted: 'pragma user_version = 1',
  attempts: 1,
  isRetryWanted: () => false,
  isReferenceBroken: (error) => codeOf(error) === 'SQLITE_CONSTRAINT_FOREIGNKEY',
  findBrokenReferences: 'select distinct "table", "parent" from pragma_foreign_key_check limit 5',
};

// Text is compared by code point ("C"), which is how SQLite compares UTF-8, so that both sort alike. `lock table` comes
// before the first query because a repeatable-read snapshot is taken at the first query: taken while still waiting for
// the lock it would be too old. The lock leaves readers alone.
export const postgresDialect: Dialect = {
  name: 'PostgreSQL',
  columnType: {
    text: 'text collate "C"',
    integer: 'bigint',
    real: 'double precision',
    boolean: 'smallint',
    json: 'text',
  },
  tableSuffix: '',
  listTables:
    'select table_name as name from information_schema.tables where table_schema = current_schema()',
  beginChange: ['begin isolation level repeatable read', 'lock table "change" in share row exclusive mode'],
  beginRead: ['begin isolation level repeatable read read only'],
  beginMigration: ['begin', "select pg_advisory_xact_lock(hashtext('levare ' || current_schema()))"],
  copyBeforeMigration: (number) => `
    do $$
    declare
      target text := current_schema() || '_before_${String(number).padStart(4, '0')}';
      source text;
    begin
      execute format('drop schema if exists %I cascade', target);
      execute format('create schema %I', target);
      for source in select table_name from information_schema.tables where table_schema = current_schema() loop
        execute format('create table %I.%I as table %I', target, source, source);
      end loop;
    end $$`,
  noteUncompacted: null,
  attempts: 5,
  // serialization_failure and deadlock_detected, foreign_key_violation: PostgreSQL 18 manual, appendix A.
  isRetryWanted: (error) => ['40001', '40P01'].includes(codeOf(error)),
  isReferenceBroken: (error) => codeOf(error) === '23503',
  findBrokenReferences: null,
};

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';
