// The store's few verbs on any database that `Connections` stands for.

import { ok, type Result } from '#core';
import type { ChangeHeader, ChangeOutcome, Store, Transactor } from '#studio';
import { type Connections, type Ending, inTransaction } from './connections.ts';
import { dumpStudio, loadStudio } from './dump.ts';
import { forgetChanges, writeChange } from './journal.ts';
import { createNestingGuard } from './nesting.ts';
import { createReader } from './reader.ts';
import { createStatements, type Run } from './statements.ts';
import { createTransactor } from './transactor.ts';

export function createStore(connections: Connections): Store {
  const { dialect } = connections;
  const statements = createStatements(connections.builder);
  const nesting = createNestingGuard(connections.takesTurns);

  const inWriter = <R>(work: (run: Run) => Promise<Ending<R>>): Promise<R> =>
    nesting.enter('change', () =>
      connections.withWriter((run) => inTransaction(run, dialect, dialect.beginChange, work)),
    );

  const inReader = <R>(work: (run: Run) => Promise<R>): Promise<R> =>
    nesting.enter('read', () =>
      connections.withReader((run) =>
        inTransaction(run, dialect, dialect.beginRead, async (inside) => ({
          end: 'commit',
          value: await work(inside),
        })),
      ),
    );

  /** Tries again while the database asks to. */
  const patiently = async <R>(work: () => Promise<R>): Promise<R> => {
    for (let attempt = 1; ; attempt++) {
      try {
        return await work();
      } catch (error) {
        if (attempt >= dialect.attempts || !dialect.isRetryWanted(error)) throw error;
      }
    }
  };

  return {
    read: (work) => inReader((run) => work(createReader(run, statements))),

    change: <R, E>(
      header: Omit<ChangeHeader, 'label'>,
      work: (transactor: Transactor) => Promise<Result<ChangeOutcome<R>, E>>,
    ) =>
      patiently(() =>
        inWriter<Result<R, E>>(async (run) => {
          const earlier = await createReader(run, statements).getChange(header.id);
          // The reply was given to the same change, so it has the same type.
          if (earlier !== null) return { end: 'rollback', value: ok(earlier.reply as R) };
          const hand = createTransactor(run, statements, header.id, dialect.noteUncompacted);
          try {
            const outcome = await work(hand.transactor);
            if (!outcome.ok) return { end: 'rollback', value: outcome };
            const { label, reply } = outcome.value;
            const rows = await hand.finish();
            const change = hand.toJournal({ ...header, label, reply, undoneBy: null, rows });
            await writeChange(run, statements, change, change.rows);
            return { end: 'commit', value: ok(reply) };
          } finally {
            hand.close();
          }
        }),
      ),

    imagine: (work) =>
      patiently(() =>
        inWriter(async (run) => {
          const hand = createTransactor(run, statements, null, dialect.noteUncompacted);
          try {
            return { end: 'rollback', value: await work(hand.transactor) };
          } finally {
            hand.close();
          }
        }),
      ),

    forgetChanges: (before) =>
      inWriter(async (run) => ({ end: 'commit', value: await forgetChanges(run, statements, before) })),
    compact: () => nesting.enter('change', () => connections.compact()),
    dump: () => inReader((run) => dumpStudio(run, statements)),
    load: (dump) => inWriter((run) => loadStudio(run, statements, dump)),
    close: () => connections.close(),
  };
}
