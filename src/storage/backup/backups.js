// The backups of one studio file: made online from a reader's snapshot while the studio is in use, verified, and only
// then counted, so that a damaged file never pushes good backups out.
import { chmodSync, closeSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, } from 'node:fs';
import { dirname, join } from 'node:path';
import { err, ok } from '#core';
import { openConnection } from '../sqlite/connection.js';
import { isDamage, messageOf } from '../sqlite/sqlite-error.js';
import { findExpiredBackups, formatBackupName, parseBackupName, sortBackups, } from './backup-name.js';
import { verifyFile } from './verify-file.js';
/** Pages of 4 KB copied between two turns of the event loop. */
const pagesAtOnce = 2000;
/** The backups beside a studio's file, in `backups`. */
export function createBackups(path, clock) {
    const folder = backupFolder(path);
    let last = Promise.resolve();
    const make = (beforeMigration) => {
        const result = last.then(() => makeBackup(path, folder, clock, beforeMigration));
        last = result;
        return result;
    };
    return {
        folder,
        make,
        async makeIfDue() {
            const today = clock.today();
            const done = listFolder(folder).some((backup) => backup.day === today && backup.beforeMigration === null);
            return done ? ok(null) : await make(null);
        },
        list: () => listFolder(folder),
    };
}
const backupFolder = (path) => join(dirname(path), 'backups');
/** The backups of the studio in a file, newest first; also when the file itself cannot be opened. */
export const listBackups = (path) => listFolder(backupFolder(path));
/** The backups in a folder, newest first; none when it does not exist. */
function listFolder(folder) {
    try {
        return sortBackups(readdirSync(folder).flatMap((file) => parseBackupName(file) ?? []));
    }
    catch {
        return [];
    }
}
async function makeBackup(path, folder, clock, beforeMigration) {
    const part = join(folder, 'unfinished.part');
    try {
        mkdirSync(folder, { recursive: true, mode: 0o700 });
        removeDatabase(part);
        closeSync(openSync(part, 'w', 0o600));
        await copyOnline(path, part);
        const verified = verifyFile(part);
        if (!verified.ok) {
            removeDatabase(part);
            return verified;
        }
        chmodSync(part, 0o600);
        writeThrough(part);
        const file = freeName(folder, clock, beforeMigration);
        renameSync(part, join(folder, file));
        writeThrough(folder);
        for (const expired of findExpiredBackups(listFolder(folder)))
            rmSync(join(folder, expired.file));
        return ok(file);
    }
    catch (error) {
        return err({ kind: isDamage(error) ? 'damaged' : 'unreadable', detail: messageOf(error) });
    }
}
/** Copies a database that may be in use; what is written meanwhile is in the copy wholly or not at all. */
export async function copyOnline(from, to) {
    const { handle } = openConnection(from, 'read');
    try {
        await handle.backup(to, { progress: () => pagesAtOnce });
    }
    finally {
        handle.close();
    }
}
/** Removes a database with what SQLite keeps beside it. */
export function removeDatabase(path) {
    for (const tail of ['', '-journal', '-wal', '-shm'])
        rmSync(path + tail, { force: true });
}
/** Asks the disk to really have a file, or a folder's list of files. */
export function writeThrough(path) {
    try {
        const file = openSync(path, 'r');
        try {
            fsyncSync(file);
        }
        finally {
            closeSync(file);
        }
    }
    catch {
        // Windows opens no folders and syncs no file opened for reading; there the rename is as safe as it gets.
    }
}
function freeName(folder, clock, beforeMigration) {
    const taken = listFolder(folder)
        .filter((backup) => backup.day === clock.today() && backup.beforeMigration === beforeMigration)
        .map((backup) => backup.nth);
    return formatBackupName(clock.today(), beforeMigration, Math.max(0, ...taken) + 1);
}
//# sourceMappingURL=backups.js.map