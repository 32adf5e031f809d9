import Database from 'better-sqlite3';
import { Kysely } from 'kysely';
import type { StudioDatabase } from '../store/statements.ts';
export interface SqliteConnection {
    readonly handle: Database.Database;
    readonly database: Kysely<StudioDatabase>;
}
/** Opens a file, or a database in memory for `:memory:`. Throws what SQLite throws. */
export declare function openConnection(path: string, mode: 'write' | 'read'): SqliteConnection;
