// What a store needs of a database: a connection to write on, connections to read on, each for the length of one
// transaction.

import type { Kysely } from 'kysely';
import { assert, err, ok, type Result } from '#core';
import type { NotCompacted } from '#studio';
import type { Dialect } from '../dialect/dialect.ts';
import type { Run, StudioDatabase } from './statements.ts';

export interface Connections {
  readonly dialect: Dialect;
  /** Builds SQL. */
  readonly builder: Kysely<StudioDatabase>;
  /** Whether readers and the writer wait for one another. */
  readonly takesTurns: boolean;
  /** Waits until no other writer is at work in this program. */
  withWriter<R>(work: (run: Run) => Promise<R>): Promise<R>;
  withReader<R>(work: (run: Run) => Promise<R>): Promise<R>;
  /** Writes the database's file anew without what was deleted from it. */
  compact(): Promise<Result<null, NotCompacted>>;
  close(): Promise<void>;
}

/** Does the work of `compact`; a disk without room and the like leave the file as it is, and are told. */
export async function tryToCompact(work: () => Promise<void>): Promise<Result<null, NotCompacted>> {
  try {
    await work();
    return ok(null);
  } catch (error) {
    return err({ kind: 'NotCompacted', detail: error instanceof Error ? error.message : String(error) });
  }
}

export interface Ending<R> {
  readonly end: 'commit' | 'rollback';
  readonly value: R;
}

/**
 * Runs `work` after `begin` and ends the transaction as it says; whatever is thrown rolls back and goes on up. The
 * `Run` that `work` is given fails once the transaction has ended, so that nothing is written outside of one.
 */
export async function inTransaction<R>(
  run: Run,
  dialect: Dialect,
  begin: readonly string[],
  work: (run: Run) => Promise<Ending<R>>,
): Promise<R> {
  let open = true;
  const runInside: Run = (sql, parameters) => {
    assert(open, 'a transaction is used only while it lasts');
    return run(sql, parameters);
  };
  try {
    for (const statement of begin) await run(statement);
    const { end, value } = await work(runInside);
    open = false;
    await run(end);
    return value;
  } catch (error) {
    open = false;
    const explained = await explainReferences(run, dialect, error);
    // A lost connection, or a database that rolled back by itself, cannot roll back again; the first error is the one to tell.
    await run('rollback').catch(() => null);
    throw explained;
  }
}

/** Names the tables at fault where the database only says that some reference is broken. */
async function explainReferences(run: Run, dialect: Dialect, error: unknown): Promise<unknown> {
  if (dialect.findBrokenReferences === null || !dialect.isReferenceBroken(error)) return error;
  const broken = await run(dialect.findBrokenReferences).catch(() => []);
  const list = broken.map((row) => `${row['table']} → ${row['parent']}`).join(', ');
  return new Error(`Rows refer to rows that are not there (foreign key): ${list}`, { cause: error });
}
