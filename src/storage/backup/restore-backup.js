// Puts a backup in the place of a studio's file. What was there is set aside, never thrown away, and at every moment
// there is a whole file in place.
import { chmodSync, copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { err, ok } from '#core';
import { sqliteDialect } from '../dialect/dialect.js';
import { migrations } from '../migrations/list.js';
import { readDatabaseState } from '../migrations/migrate.js';
import { openConnection } from '../sqlite/connection.js';
import { lockFolder } from '../sqlite/folder-lock.js';
import { messageOf } from '../sqlite/sqlite-error.js';
import { removeDatabase, writeThrough } from './backups.js';
import { verifyFile } from './verify-file.js';
/**
 * Restores a backup while no program has the studio open. `backup` is a name in the backup folder or a path to any
 * backup file.
 */
export async function restoreBackup({ path, backup, clock, }) {
    const folder = join(dirname(path), 'backups');
    const source = [join(folder, backup), backup].find((candidate) => existsSync(candidate));
    if (source === undefined)
        return err({ kind: 'NoSuchBackup', backup, folder });
    const lock = lockFolder(dirname(path), clock.instant());
    if (!lock.ok)
        return lock;
    const fresh = `${path}.restoring`;
    try {
        removeDatabase(fresh);
        copyFileSync(source, fresh);
        chmodSync(fresh, 0o600);
        const verified = verifyFile(fresh);
        if (!verified.ok)
            return err({ kind: 'BackupUnusable', backup, detail: verified.error.detail });
        const { database } = openConnection(fresh, 'read');
        const state = await readDatabaseState(database, sqliteDialect, migrations).finally(() => database.destroy());
        if (!state.ok)
            return err({ path: source, ...state.error });
        if (state.value.version === 0)
            return err({ kind: 'BackupUnusable', backup, detail: 'it holds no studio' });
        writeThrough(fresh);
        const setAside = setCurrentAside(path, clock);
        renameSync(fresh, path);
        writeThrough(dirname(path));
        return ok({ setAside });
    }
    catch (error) {
        return err({ kind: 'FolderUnusable', path, detail: messageOf(error) });
    }
    finally {
        removeDatabase(fresh);
        lock.value.release();
    }
}
/** Copies what is in place to a free name beside it; the copy's path, or null when nothing is in place. */
function setCurrentAside(path, clock) {
    if (!existsSync(path))
        return null;
    try {
        openConnection(path, 'write').handle.close(); // folds the WAL back into the file
    }
    catch {
        // Damaged: it is set aside as it is, with what lies beside it.
    }
    const aside = freeAside(path, clock);
    for (const tail of ['', '-wal'])
        if (existsSync(path + tail))
            copyFileSync(path + tail, aside + tail);
    writeThrough(aside);
    for (const tail of ['-wal', '-shm'])
        rmSync(path + tail, { force: true });
    return aside;
}
function freeAside(path, clock) {
    const stem = join(dirname(path), `${basename(path, '.sqlite')}-set-aside-${clock.today()}`);
    for (let nth = 1;; nth++) {
        const candidate = nth === 1 ? `${stem}.sqlite` : `${stem}-${nth}.sqlite`;
        if (!existsSync(candidate))
            return candidate;
    }
}
//# sourceMappingURL=restore-backup.js.map