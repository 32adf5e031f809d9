// Backups by their file names, and which of them have had their time.
import { isDate, isoWeekOf } from '#core';
const keptDays = 7;
const keptWeeks = 4;
const keptOfNewestDay = 3;
const keptBeforeMigrations = 3;
/** `formatBackupName('2026-11-25', null, 2)` → `levare-2026-11-25-2.sqlite`; before a migration `levare-2026-11-25-before-0002.sqlite` */
export function formatBackupName(day, beforeMigration, nth) {
    const before = beforeMigration === null ? '' : `-before-${String(beforeMigration).padStart(4, '0')}`;
    return `levare-${day}${before}${nth === 1 ? '' : `-${nth}`}.sqlite`;
}
/** The backup that a file name stands for, or null when it is none of ours. */
export function parseBackupName(file) {
    const found = /^levare-(\d{4}-\d\d-\d\d)(?:-before-(\d{4}))?(?:-([2-9]|[1-9]\d+))?\.sqlite$/.exec(file);
    const day = found?.[1];
    if (day === undefined || !isDate(day))
        return null;
    return {
        file,
        day,
        beforeMigration: found?.[2] === undefined ? null : Number(found[2]),
        nth: Number(found?.[3] ?? 1),
    };
}
/** Newest first. */
export function sortBackups(backups) {
    return backups.toSorted((a, b) => b.day.localeCompare(a.day) || (b.beforeMigration ?? 0) - (a.beforeMigration ?? 0) || b.nth - a.nth);
}
/**
 * The backups to remove. Kept are: the last of each of the 7 newest days (of the newest day the last 3), the last of
 * each of the 4 newest weeks before those days, and the last 3 made before a migration. Days count as days with a
 * backup, so a studio that rests for the summer loses nothing by it.
 */
export function findExpiredBackups(backups) {
    const sorted = sortBackups(backups);
    const dated = sorted.filter((backup) => backup.beforeMigration === null);
    const days = [...new Set(dated.map((backup) => backup.day))];
    const recent = new Set(days.slice(0, keptDays));
    const weekOf = (day) => Object.values(isoWeekOf(day)).join('-');
    const earlier = dated.filter((backup) => !recent.has(backup.day));
    const weeks = [...new Set(earlier.map((backup) => weekOf(backup.day)))].slice(0, keptWeeks);
    const kept = new Set([
        ...dated.filter((backup) => backup.day === days[0]).slice(0, keptOfNewestDay),
        ...[...recent].map((day) => dated.find((backup) => backup.day === day)),
        ...weeks.map((week) => earlier.find((backup) => weekOf(backup.day) === week)),
        ...sorted.filter((backup) => backup.beforeMigration !== null).slice(0, keptBeforeMigrations),
    ]);
    return sorted.filter((backup) => !kept.has(backup));
}
//# sourceMappingURL=backup-name.js.map