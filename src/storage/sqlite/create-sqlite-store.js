// The embedded store: one SQLite file in the studio's data folder, or a database in memory that is gone when closed.
import { chmodSync, closeSync, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { err, ok } from '#core';
import { createBackups } from '../backup/backups.js';
import { sqliteDialect } from '../dialect/dialect.js';
import { migrations as allMigrations } from '../migrations/list.js';
import { migrate, readDatabaseState } from '../migrations/migrate.js';
import { createStore } from '../store/create-store.js';
import { openConnection } from './connection.js';
import { lockFolder } from './folder-lock.js';
import { createFileConnections, createMemoryConnections } from './sqlite-connections.js';
import { isDamage, isWorld, messageOf } from './sqlite-error.js';
/**
 * Opens the studio in a file, making it when there is none. A studio that has something in it is backed up before
 * anything else happens to it.
 */
export async function createSqliteStore(options) {
    const { path, clock } = options;
    const folder = dirname(path);
    try {
        mkdirSync(folder, { recursive: true, mode: 0o700 });
    }
    catch (error) {
        return err({ kind: 'FolderUnusable', path: folder, detail: messageOf(error) });
    }
    const lock = lockFolder(folder, clock.instant());
    if (!lock.ok)
        return lock;
    const backups = createBackups(path, clock);
    let opened;
    try {
        opened = await openFile(options, backups);
    }
    catch (error) {
        if (isDamage(error))
            opened = err(fileDamaged(path, backups, messageOf(error)));
        else if (isWorld(error))
            opened = err({ kind: 'FolderUnusable', path, detail: messageOf(error) });
        else {
            lock.value.release();
            throw error;
        }
    }
    if (!opened.ok) {
        lock.value.release();
        return opened;
    }
    const store = opened.value;
    const timer = setInterval(() => {
        backups.makeIfDue().then((outcome) => {
            if (!outcome.ok)
                options.onBackup?.(outcome);
            else if (outcome.value !== null)
                options.onBackup?.(ok(outcome.value));
        }, (error) => options.onBackup?.(err({ kind: 'unreadable', detail: messageOf(error) })));
    }, hour);
    timer.unref();
    return ok({
        ...store,
        backupFolder: backups.folder,
        listBackups: () => backups.list(),
        backUp: () => backups.make(null),
        backUpIfDue: () => backups.makeIfDue(),
        async close() {
            clearInterval(timer);
            await store.close();
            lock.value.release();
        },
    });
}
/** A studio in memory, for tests and for what-ifs on the command line. Reads and changes take turns on it. */
export async function createMemoryStore(clock) {
    const only = openConnection(':memory:', 'write');
    await migrate(only.database, sqliteDialect, allMigrations, clock.instant());
    return createStore(createMemoryConnections(only));
}
const hour = 3_600_000;
async function openFile(options, backups) {
    const { path, clock, migrations = allMigrations } = options;
    const isNew = createFileIfMissing(path);
    if (!isNew && statSync(path).size === 0 && backups.list().length > 0)
        return err(fileDamaged(path, backups, 'it is empty'));
    const state = await inspectFile(path, migrations);
    if (!state.ok)
        return state;
    const backedUp = await backUpAtOpening(options, backups, state.value);
    if (!backedUp.ok)
        return backedUp;
    const writer = openConnection(path, 'write');
    try {
        const migrated = await migrate(writer.database, sqliteDialect, migrations, clock.instant());
        if (migrated.ok)
            return ok(createStore(createFileConnections(path, writer)));
        await writer.database.destroy();
        return err({ path, ...migrated.error });
    }
    catch (error) {
        await writer.database.destroy();
        throw error;
    }
}
/** Only the owner may read it: it is about children. SQLite gives the files beside it the same rights. */
function createFileIfMissing(path) {
    const isNew = statSync(path, { throwIfNoEntry: false }) === undefined;
    closeSync(openSync(path, 'a', 0o600));
    chmodSync(path, 0o600);
    return isNew;
}
/** Looks without writing, so that a file that is not ours stays as it is. */
async function inspectFile(path, migrations) {
    const { database } = openConnection(path, 'read');
    try {
        const state = await readDatabaseState(database, sqliteDialect, migrations);
        return state.ok ? state : err({ path, ...state.error });
    }
    finally {
        await database.destroy();
    }
}
async function backUpAtOpening({ path, onBackup }, backups, { version, pending }) {
    if (version === 0)
        return ok(null);
    const made = await backups.make(pending[0]?.number ?? null);
    onBackup?.(made);
    if (made.ok)
        return ok(null);
    if (made.error.kind === 'damaged')
        return err(fileDamaged(path, backups, made.error.detail));
    // Without a migration ahead, a full disk must not keep a teacher from the day's lessons.
    return pending.length > 0 ? err({ kind: 'BackupFailed', path, detail: made.error.detail }) : ok(null);
}
const fileDamaged = (path, backups, detail) => ({
    kind: 'FileDamaged',
    path,
    detail,
    backupFolder: backups.folder,
    backups: backups.list().map((backup) => backup.file),
});
//# sourceMappingURL=create-sqlite-store.js.map