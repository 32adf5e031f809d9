import type { ColumnKind } from '../schema/column.ts';
export interface Dialect {
    /** For messages. */
    readonly name: string;
    readonly columnType: {
        readonly [K in ColumnKind]: string;
    };
    /** Appended to `create table`. */
    readonly tableSuffix: string;
    /** Lists the tables there are, as `name`. */
    readonly listTables: string;
    /** Statements that open a change: from here on no other change can begin, so changes follow one another. */
    readonly beginChange: readonly string[];
    /** Statements that open a reader's snapshot. */
    readonly beginRead: readonly string[];
    /** Statements that open the transaction of all pending migrations, so that only one program migrates. */
    readonly beginMigration: readonly string[];
    /**
     * Copies every table before a migration, in the migration's own transaction; null where the studio is a file, which is
     * backed up whole.
     */
    copyBeforeMigration(number: number): string | null;
    /** How often a change is tried when the database itself asks to try again. */
    readonly attempts: number;
    /** Whether an error is such a request. */
    isRetryWanted(error: unknown): boolean;
    /** Whether an error says that rows refer to rows that are not there. */
    isReferenceBroken(error: unknown): boolean;
    /** Lists broken references inside the failed transaction, for the message; null where the error names them itself. */
    readonly findBrokenReferences: string | null;
}
export declare const sqliteDialect: Dialect;
export declare const postgresDialect: Dialect;
