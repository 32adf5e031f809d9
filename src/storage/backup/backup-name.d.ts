import { type PlainDate } from '#core';
/** A backup in the backup folder. */
export interface Backup {
    /** `levare-2026-11-25.sqlite`, the day's second `levare-2026-11-25-2.sqlite`. */
    readonly file: string;
    readonly day: PlainDate;
    /** The first migration that was about to run, for a backup made before migrating. */
    readonly beforeMigration: number | null;
    /** 1 for the first of its kind on its day. */
    readonly nth: number;
}
/** `formatBackupName('2026-11-25', null, 2)` → `levare-2026-11-25-2.sqlite`; before a migration `levare-2026-11-25-before-0002.sqlite` */
export declare function formatBackupName(day: PlainDate, beforeMigration: number | null, nth: number): string;
/** The backup that a file name stands for, or null when it is none of ours. */
export declare function parseBackupName(file: string): Backup | null;
/** Newest first. */
export declare function sortBackups(backups: readonly Backup[]): readonly Backup[];
/**
 * The backups to remove. Kept are: the last of each of the 7 newest days (of the newest day the last 3), the last of
 * each of the 4 newest weeks before those days, and the last 3 made before a migration. Days count as days with a
 * backup, so a studio that rests for the summer loses nothing by it.
 */
export declare function findExpiredBackups(backups: readonly Backup[]): readonly Backup[];
