import { type Kysely } from 'kysely';
import type { TableName } from '#studio';
import type { NamedRow, SqlValue } from '../row/row-mapping.ts';
import type { Column, TableDescription } from '../schema/column.ts';
/** Tables and columns are described in `schema/`; to Kysely they are names. */
export interface StudioDatabase {
    readonly [table: string]: {
        readonly [column: string]: SqlValue;
    };
}
/** Runs one statement on the connection in hand. */
export type Run = (sql: string, parameters?: readonly SqlValue[]) => Promise<readonly NamedRow[]>;
/** `Run` on a Kysely connection. */
export declare const createRun: (connection: Kysely<StudioDatabase>) => Run;
/** The shape of a list: which columns are compared with a value or with null, ranged, ordered. Values come apart. */
export interface ListShape {
    readonly equal: readonly Column[];
    readonly none: readonly Column[];
    readonly from: Column | null;
    readonly to: Column | null;
    readonly orderBy: readonly Column[];
}
export interface Statements {
    /** `count` ids. */
    selectByIds(table: TableDescription<TableName>, count: number): string;
    /** The values of `equal`, then `from`, then `to`. */
    list(table: TableDescription<TableName>, shape: ListShape): string;
    count(table: string): string;
    /** `count` rows one after the other; a row whose id is there replaces what is there. */
    upsert(table: TableDescription<TableName>, count: number): string;
    removeByIds(table: TableDescription<TableName>, count: number): string;
    /** `count` rows with these columns. */
    insert(table: string, columns: readonly string[], count: number): string;
    /** The most wanted. */
    readonly newestChanges: string;
    /** In the order in which they were made. */
    readonly oldestChanges: string;
    /** The change's id. */
    readonly changeById: string;
    /** The change's id. */
    readonly changedRows: string;
    /** Every touched row of the journal, change by change. */
    readonly allChangedRows: string;
    /** Id, at, label, type, reply, undone by. */
    readonly insertChange: string;
    /** The change that undid, then the change undone. */
    readonly markUndone: string;
}
export declare function createStatements(database: Kysely<StudioDatabase>): Statements;
/** Cuts a list into pieces whose lengths are powers of two up to 64, so that few shapes of statement are needed. */
export declare function cutIntoBatches<T>(items: readonly T[]): readonly (readonly T[])[];
/** The named column of a table. Throws when there is none, or when JSON is asked to be compared. */
export declare function comparableColumn(table: TableDescription<TableName>, field: string): Column;
