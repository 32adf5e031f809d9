import type { TableName } from '#studio';
import type { TableDescription } from './column.ts';
/** The description of each table by its name in `#studio`. */
export declare const tables: {
    readonly [T in TableName]: TableDescription<T>;
};
/** The tables' names, referred-to ones first. */
export declare const tableNames: readonly TableName[];
