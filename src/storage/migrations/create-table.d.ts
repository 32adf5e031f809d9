import { type Kysely } from 'kysely';
import type { Dialect } from '../dialect/dialect.ts';
import type { StudioDatabase } from '../store/statements.ts';
/**
 * Creates a table. A column is its kind, then `null` when it may be null, `key` when it is the table's key (all such
 * columns together), and `references table` when it holds ids of that table. References are checked when the
 * transaction ends, so that undo and import may write rows in any order.
 */
export declare function createTable(database: Kysely<StudioDatabase>, dialect: Dialect, name: string, columns: Readonly<Record<string, string>>): Promise<void>;
/** Creates an index on some columns of a table, named after them. */
export declare function createIndex(database: Kysely<StudioDatabase>, table: string, columns: readonly string[]): Promise<void>;
