import { type Result } from '#core';
export type FileDoubtful = {
    /** `damaged`: what is in it is wrong. `unreadable`: the world around it is (no such file, no right, no space). */
    readonly kind: 'damaged' | 'unreadable';
    readonly detail: string;
};
/** Checks a file that nothing else has open, and makes it one file without a WAL beside it. */
export declare function verifyFile(path: string): Result<null, FileDoubtful>;
