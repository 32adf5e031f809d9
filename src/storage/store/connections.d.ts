import type { Kysely } from 'kysely';
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
    close(): Promise<void>;
}
export interface Ending<R> {
    readonly end: 'commit' | 'rollback';
    readonly value: R;
}
/**
 * Runs `work` after `begin` and ends the transaction as it says; whatever is thrown rolls back and goes on up. The
 * `Run` that `work` is given fails once the transaction has ended, so that nothing is written outside of one.
 */
export declare function inTransaction<R>(run: Run, dialect: Dialect, begin: readonly string[], work: (run: Run) => Promise<Ending<R>>): Promise<R>;
