// The store's few verbs on any database that `Connections` stands for.
import { ok } from '#core';
import { inTransaction } from './connections.js';
import { dumpStudio, loadStudio } from './dump.js';
import { writeChange } from './journal.js';
import { createNestingGuard } from './nesting.js';
import { createReader } from './reader.js';
import { createStatements } from './statements.js';
import { createTransactor } from './transactor.js';
export function createStore(connections) {
    const { dialect } = connections;
    const statements = createStatements(connections.builder);
    const nesting = createNestingGuard(connections.takesTurns);
    const inWriter = (work) => nesting.enter('change', () => connections.withWriter((run) => inTransaction(run, dialect, dialect.beginChange, work)));
    const inReader = (work) => nesting.enter('read', () => connections.withReader((run) => inTransaction(run, dialect, dialect.beginRead, async (inside) => ({
        end: 'commit',
        value: await work(inside),
    }))));
    /** Tries again while the database asks to. */
    const patiently = async (work) => {
        for (let attempt = 1;; attempt++) {
            try {
                return await work();
            }
            catch (error) {
                if (attempt >= dialect.attempts || !dialect.isRetryWanted(error))
                    throw error;
            }
        }
    };
    return {
        read: (work) => inReader((run) => work(createReader(run, statements))),
        change: (header, work) => patiently(() => inWriter(async (run) => {
            const earlier = await createReader(run, statements).getChange(header.id);
            // The reply was given to the same change, so it has the same type.
            if (earlier !== null)
                return { end: 'rollback', value: ok(earlier.reply) };
            const hand = createTransactor(run, statements, header.id);
            try {
                const outcome = await work(hand.transactor);
                if (!outcome.ok)
                    return { end: 'rollback', value: outcome };
                const { label, reply } = outcome.value;
                const rows = await hand.finish();
                await writeChange(run, statements, { ...header, label, reply, undoneBy: null }, rows);
                return { end: 'commit', value: ok(reply) };
            }
            finally {
                hand.close();
            }
        })),
        imagine: (work) => patiently(() => inWriter(async (run) => {
            const hand = createTransactor(run, statements, null);
            try {
                return { end: 'rollback', value: await work(hand.transactor) };
            }
            finally {
                hand.close();
            }
        })),
        dump: () => inReader((run) => dumpStudio(run, statements)),
        load: (dump) => inWriter((run) => loadStudio(run, statements, dump)),
        close: () => connections.close(),
    };
}
//# sourceMappingURL=create-store.js.map