// One SQLite connection, set up alike everywhere, and as Kysely wants it.

import Database from 'better-sqlite3';
import { Kysely, SqliteDialect, type SqliteStatement } from 'kysely';
import type { StudioDatabase } from '../store/statements.ts';

export interface SqliteConnection {
  readonly handle: Database.Database;
  readonly database: Kysely<StudioDatabase>;
}

/**
 * Opens a file, or a database in memory for `:memory:`. Throws what SQLite throws. `look` is for reading a file that is there,
 * where SQLite may clear away what it lays beside it: to `read` alone it may not.
 */
export function openConnection(path: string, mode: 'write' | 'read' | 'look'): SqliteConnection {
  const handle = new Database(path, {
    readonly: mode === 'read',
    fileMustExist: mode === 'look',
    timeout: busyMilliseconds,
  });
  try {
    if (mode === 'write') {
      handle.pragma('journal_mode = WAL');
      // A change that was answered survives a power cut: WAL is written through at each commit.
      handle.pragma('synchronous = FULL');
      // A recording deleted for good is not left in the file's free pages, nor in the backups made of it from then on.
      handle.pragma('secure_delete = ON');
    }
    handle.pragma('foreign_keys = ON');
  } catch (error) {
    handle.close();
    throw error;
  }
  return {
    handle,
    database: new Kysely({ dialect: new SqliteDialect({ database: keepStatements(handle) }) }),
  };
}

/** How long to wait for another program (a backup, a reader) that holds the file. */
const busyMilliseconds = 5000;

/** Prepares each text once. A store runs a few dozen texts in all. */
function keepStatements(handle: Database.Database): {
  prepare(sql: string): SqliteStatement;
  close(): void;
} {
  const statementByText = new Map<string, SqliteStatement>();
  return {
    prepare(sql) {
      const known = statementByText.get(sql);
      if (known) return known;
      const statement = handle.prepare(sql) as SqliteStatement; // the methods Kysely names, with looser parameters
      statementByText.set(sql, statement);
      return statement;
    },
    close: () => handle.close(),
  };
}
