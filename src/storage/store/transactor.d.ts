import type { ChangedRow, ChangeId, Transactor } from '#studio';
import { type Run, type Statements } from './statements.ts';
/** A transactor with its end: what was touched. */
export interface ChangeInHand {
    readonly transactor: Transactor;
    /** Writes what is still in hand and closes the transactor; the rows that differ from before, in order of touch. */
    finish(): Promise<readonly ChangedRow[]>;
    /** Closes the transactor as it is. */
    close(): void;
}
/** Begins the writing of one change on a connection that has its transaction open; `id` is null for what-if. */
export declare function createTransactor(run: Run, statements: Statements, id: ChangeId | null): ChangeInHand;
