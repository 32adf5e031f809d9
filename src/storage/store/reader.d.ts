import type { Query, Reader, TableName } from '#studio';
import { type Row } from '../row/row-mapping.ts';
import type { TableDescription } from '../schema/column.ts';
import { type Run, type Statements } from './statements.ts';
/** The table's description with its own type narrowed away, for code that works on any table. */
export declare const describe: (table: TableName) => TableDescription<TableName>;
export declare function createReader(run: Run, statements: Statements): Reader;
/** The rows with these ids, in no particular order; at most 64 ids, each once. */
export declare function selectRowsById(run: Run, statements: Statements, table: TableName, ids: readonly string[]): Promise<readonly Row[]>;
/** The rows that a query asks for, in its order. */
export declare function selectRows<T extends TableName>(run: Run, statements: Statements, table: T, query: Query<T>): Promise<readonly Row[]>;
