// How a record type lies in a table: a kind for each column, checked by the compiler against the record in `#studio`.
// A record that gains a field does not compile here until the table has a column for it.

import type { TableName, Tables } from '#studio';

/** JSON is kept as text and booleans as 0 or 1, in both databases, so that one mapping serves both. */
export type ColumnKind = 'text' | 'integer' | 'real' | 'boolean' | 'json';

export interface ColumnForm {
  readonly kind: ColumnKind;
  readonly nullable: boolean;
}

type KindFor<V> = [V] extends [boolean]
  ? 'boolean'
  : [V] extends [string]
    ? 'text'
    : [V] extends [number]
      ? 'integer' | 'real'
      : 'json';

type FormFor<V> = {
  readonly kind: KindFor<NonNullable<V>>;
  readonly nullable: null extends V ? true : false;
};

/** One form for each field of the table's record. */
export type Columns<T extends TableName> = { readonly [F in keyof Tables[T]]-?: FormFor<Tables[T][F]> };

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

export const text = { kind: 'text', nullable: false } as const;
export const textOrNull = { kind: 'text', nullable: true } as const;
export const integer = { kind: 'integer', nullable: false } as const;
export const integerOrNull = { kind: 'integer', nullable: true } as const;
export const real = { kind: 'real', nullable: false } as const;
export const realOrNull = { kind: 'real', nullable: true } as const;
export const boolean = { kind: 'boolean', nullable: false } as const;
export const json = { kind: 'json', nullable: false } as const;
export const jsonOrNull = { kind: 'json', nullable: true } as const;

/** `fieldToColumn('slotDate')` → `slot_date` */
export const fieldToColumn = (field: string): string =>
  field.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);

/** Describes one table; `name` only where the plain snake_case name is a reserved word of SQL. */
export function describeTable<T extends TableName>(
  table: T,
  forms: Columns<T>,
  name: string = fieldToColumn(table),
): TableDescription<T> {
  const columns = Object.entries<ColumnForm>(forms).map(([field, form]) => ({
    field,
    name: fieldToColumn(field),
    kind: form.kind,
    nullable: form.nullable,
  }));
  return { table, name, columns, columnByField: new Map(columns.map((c) => [c.field, c])) };
}
