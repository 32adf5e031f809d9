import type { TableName, Tables } from '#studio';
import type { Column, TableDescription } from '../schema/column.ts';
export type SqlValue = string | number | null;
/** Values in the order of the table's columns. */
export type Row = readonly SqlValue[];
/** What a driver gives: values by column name. */
export type NamedRow = Readonly<Record<string, SqlValue>>;
/** Whether a text column can hold this text: no NUL character, no half surrogate pair. */
export declare const isStorable: (text: string) => boolean;
/** The row of a record. Throws, naming table and field, when a value does not fit its column. */
export declare function recordToRow<T extends TableName>(table: TableDescription<T>, record: Tables[T]): Row;
/** The record of a row. */
export declare function rowToRecord<T extends TableName>(table: TableDescription<T>, row: Row): Tables[T];
/** A driver's row as values in column order. */
export declare function namedToRow(table: TableDescription<TableName>, named: NamedRow): Row;
/** Whether two rows hold the same record; JSON is compared by what it says, not by the order of its keys. */
export declare function isSameRow(table: TableDescription<TableName>, a: Row, b: Row): boolean;
/** One value as it lies in its column. */
export declare function valueToSql(table: string, column: Column, value: unknown): SqlValue;
