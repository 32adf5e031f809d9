/** Whether the file's content is at fault: not a database, or a damaged one (SQLITE_NOTADB, SQLITE_CORRUPT and its kin). */
export declare const isDamage: (error: unknown) => boolean;
/** Whether someone else has the file locked. */
export declare const isBusy: (error: unknown) => boolean;
/** Whether the world is at fault: no right, no space, no such folder, a disk that fails. */
export declare const isWorld: (error: unknown) => boolean;
/** The error in words, with its code. */
export declare function messageOf(error: unknown): string;
