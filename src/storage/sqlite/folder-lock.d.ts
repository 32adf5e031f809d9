import { type Result } from '#core';
import type { OpenFault } from '../open-fault.ts';
export interface FolderLock {
    release(): void;
}
/** Takes the folder for this program. `at` is an ISO instant, told to whoever is refused. */
export declare function lockFolder(folder: string, at: string): Result<FolderLock, OpenFault>;
