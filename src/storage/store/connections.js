// What a store needs of a database: a connection to write on, connections to read on, each for the length of one
// transaction.
import { assert } from '#core';
/**
 * Runs `work` after `begin` and ends the transaction as it says; whatever is thrown rolls back and goes on up. The
 * `Run` that `work` is given fails once the transaction has ended, so that nothing is written outside of one.
 */
export async function inTransaction(run, dialect, begin, work) {
    let open = true;
    const runInside = (sql, parameters) => {
        assert(open, 'a transaction is used only while it lasts');
        return run(sql, parameters);
    };
    try {
        for (const statement of begin)
            await run(statement);
        const { end, value } = await work(runInside);
        open = false;
        await run(end);
        return value;
    }
    catch (error) {
        open = false;
        const explained = await explainReferences(run, dialect, error);
        // A lost connection, or a database that rolled back by itself, cannot roll back again; the first error is the one to tell.
        await run('rollback').catch(() => null);
        throw explained;
    }
}
/** Names the tables at fault where the database only says that some reference is broken. */
async function explainReferences(run, dialect, error) {
    if (dialect.findBrokenReferences === null || !dialect.isReferenceBroken(error))
        return error;
    const broken = await run(dialect.findBrokenReferences).catch(() => []);
    const list = broken.map((row) => `${row['table']} → ${row['parent']}`).join(', ');
    return new Error(`Rows refer to rows that are not there (foreign key): ${list}`, { cause: error });
}
//# sourceMappingURL=connections.js.map