import { type Clock, type Result } from '#core';
import type { Store } from '#studio';
import type { Backup } from '../backup/backup-name.ts';
import type { FileDoubtful } from '../backup/verify-file.ts';
import type { Migration } from '../migrations/migration.ts';
import type { OpenFault } from '../open-fault.ts';
export interface SqliteStoreOptions {
    /** The studio's file; its folder is made when missing. Backups go to `backups` beside it. */
    readonly path: string;
    readonly clock: Clock;
    /** Told of each backup made or failed, at start and on each new day. */
    readonly onBackup?: (outcome: Result<string, FileDoubtful>) => void;
    /** For tests of migrating: the migrations to know. */
    readonly migrations?: readonly Migration[];
}
export interface SqliteStore extends Store {
    readonly backupFolder: string;
    /** Newest first. */
    listBackups(): readonly Backup[];
    /** Makes a backup now; its file name in the backup folder comes back. */
    backUp(): Promise<Result<string, FileDoubtful>>;
    /** Makes a backup unless today has one (null then). The store asks itself each hour. */
    backUpIfDue(): Promise<Result<string | null, FileDoubtful>>;
}
/**
 * Opens the studio in a file, making it when there is none. A studio that has something in it is backed up before
 * anything else happens to it.
 */
export declare function createSqliteStore(options: SqliteStoreOptions): Promise<Result<SqliteStore, OpenFault>>;
/** A studio in memory, for tests and for what-ifs on the command line. Reads and changes take turns on it. */
export declare function createMemoryStore(clock: Clock): Promise<Store>;
