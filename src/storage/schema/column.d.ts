import type { TableName, Tables } from '#studio';
/** JSON is kept as text and booleans as 0 or 1, in both databases, so that one mapping serves both. */
export type ColumnKind = 'text' | 'integer' | 'real' | 'boolean' | 'json';
export interface ColumnForm {
    readonly kind: ColumnKind;
    readonly nullable: boolean;
}
type KindFor<V> = [V] extends [boolean] ? 'boolean' : [V] extends [string] ? 'text' : [V] extends [number] ? 'integer' | 'real' : 'json';
type FormFor<V> = {
    readonly kind: KindFor<NonNullable<V>>;
    readonly nullable: null extends V ? true : false;
};
/** One form for each field of the table's record. */
export type Columns<T extends TableName> = {
    readonly [F in keyof Tables[T]]-?: FormFor<Tables[T][F]>;
};
export interface Column extends ColumnForm {
    /** The record's field, `slotDate`. */
    readonly field: string;
    /** The column's name in SQL, `slot_date`. */
    readonly name: string;
}
export interface TableDescription<T extends TableName> {
    readonly table: T;
    /** The table's name in SQL, `course_unit`. */
    readonly name: string;
    readonly columns: readonly Column[];
    readonly columnByField: ReadonlyMap<string, Column>;
}
export declare const text: {
    readonly kind: 'text';
    readonly nullable: false;
};
export declare const textOrNull: {
    readonly kind: 'text';
    readonly nullable: true;
};
export declare const integer: {
    readonly kind: 'integer';
    readonly nullable: false;
};
export declare const integerOrNull: {
    readonly kind: 'integer';
    readonly nullable: true;
};
export declare const real: {
    readonly kind: 'real';
    readonly nullable: false;
};
export declare const realOrNull: {
    readonly kind: 'real';
    readonly nullable: true;
};
export declare const boolean: {
    readonly kind: 'boolean';
    readonly nullable: false;
};
export declare const json: {
    readonly kind: 'json';
    readonly nullable: false;
};
/** `fieldToColumn('slotDate')` → `slot_date` */
export declare const fieldToColumn: (field: string) => string;
/** Describes one table; `name` only where the plain snake_case name is a reserved word of SQL. */
export declare function describeTable<T extends TableName>(table: T, forms: Columns<T>, name?: string): TableDescription<T>;
export {};
