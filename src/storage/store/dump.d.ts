import { type Result } from '#core';
import type { StoreNotEmpty, StudioDump } from '#studio';
import type { Ending } from './connections.ts';
import { type Run, type Statements } from './statements.ts';
/** Every row by table, by id, and the journal, oldest change first. */
export declare function dumpStudio(run: Run, statements: Statements): Promise<StudioDump>;
/** Writes a dump into an empty store: all of it, or nothing when it throws. */
export declare function loadStudio(run: Run, statements: Statements, dump: StudioDump): Promise<Ending<Result<null, StoreNotEmpty>>>;
