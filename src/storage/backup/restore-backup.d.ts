import { type Clock, type Result } from '#core';
import type { RestoreFault } from './restore-fault.ts';
export interface Restored {
    /** The file that holds what was there before, or null when nothing was. */
    readonly setAside: string | null;
}
/**
 * Restores a backup while no program has the studio open. `backup` is a name in the backup folder or a path to any
 * backup file.
 */
export declare function restoreBackup({ path, backup, clock, }: {
    readonly path: string;
    readonly backup: string;
    readonly clock: Clock;
}): Promise<Result<Restored, RestoreFault>>;
