import { type Clock, type Result } from '#core';
import { type Backup } from './backup-name.ts';
import { type FileDoubtful } from './verify-file.ts';
export interface Backups {
    readonly folder: string;
    /** Makes a backup now. One is made at a time; the file's name comes back. */
    make(beforeMigration: number | null): Promise<Result<string, FileDoubtful>>;
    /** Makes a backup unless there is one from today already: null then. */
    makeIfDue(): Promise<Result<string | null, FileDoubtful>>;
    /** Newest first. */
    list(): readonly Backup[];
}
/** The backups beside a studio's file, in `backups`. */
export declare function createBackups(path: string, clock: Clock): Backups;
/** The backups of the studio in a file, newest first; also when the file itself cannot be opened. */
export declare const listBackups: (path: string) => readonly Backup[];
/** Copies a database that may be in use; what is written meanwhile is in the copy wholly or not at all. */
export declare function copyOnline(from: string, to: string): Promise<void>;
/** Removes a database with what SQLite keeps beside it. */
export declare function removeDatabase(path: string): void;
/** Asks the disk to really have a file, or a folder's list of files. */
export declare function writeThrough(path: string): void;
