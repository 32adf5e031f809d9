import type { DatabaseNewer, NotAStudio } from './migrations/migrate.ts';
export type OpenFault = ({
    readonly path: string;
} & DatabaseNewer) | ({
    readonly path: string;
} & NotAStudio)
/** Another Levare has the data folder. `holder` says which, when it can be read. */
 | {
    readonly kind: 'FolderInUse';
    readonly folder: string;
    readonly holder: string | null;
}
/** The folder or the file cannot be made, read or written. */
 | {
    readonly kind: 'FolderUnusable';
    readonly path: string;
    readonly detail: string;
}
/** The file is not a SQLite database, or is a damaged one. `backups` are there to restore, newest first. */
 | {
    readonly kind: 'FileDamaged';
    readonly path: string;
    readonly detail: string;
    readonly backupFolder: string;
    readonly backups: readonly string[];
}
/** No backup could be made before a migration, so nothing was changed. */
 | {
    readonly kind: 'BackupFailed';
    readonly path: string;
    readonly detail: string;
}
/** PostgreSQL does not answer, or not to us. `path` is the database's address without its password. */
 | {
    readonly kind: 'DatabaseUnreachable';
    readonly path: string;
    readonly detail: string;
}
/** PostgreSQL answers but is set up in a way that would spoil text. */
 | {
    readonly kind: 'DatabaseUnsuitable';
    readonly path: string;
    readonly detail: string;
};
/** The fault in sentences: what, where, how to mend. */
export declare function formatOpenFault(fault: OpenFault): string;
