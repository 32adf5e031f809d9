import { type Kysely } from 'kysely';
import { type Result } from '#core';
import type { Dialect } from '../dialect/dialect.ts';
import { type StudioDatabase } from '../store/statements.ts';
import type { Migration } from './migration.ts';
/** `found` is the database's newest migration, `known` this program's. */
export type DatabaseNewer = {
    readonly kind: 'DatabaseNewer';
    readonly found: number;
    readonly known: number;
};
/** The database holds tables of something else. */
export type NotAStudio = {
    readonly kind: 'NotAStudio';
    readonly tables: readonly string[];
};
export interface DatabaseState {
    /** The newest migration applied; 0 for an empty database. */
    readonly version: number;
    readonly pending: readonly Migration[];
}
/** What is applied and what is pending, without touching anything. */
export declare function readDatabaseState(database: Kysely<StudioDatabase>, dialect: Dialect, migrations: readonly Migration[]): Promise<Result<DatabaseState, DatabaseNewer | NotAStudio>>;
/** Applies what is pending: all of it or, when a step throws, none. `at` is an ISO instant for the record. */
export declare function migrate(database: Kysely<StudioDatabase>, dialect: Dialect, migrations: readonly Migration[], at: string): Promise<Result<null, DatabaseNewer | NotAStudio>>;
