// How a record type lies in a table: a kind for each column, checked by the compiler against the record in `#studio`.
// A record that gains a field does not compile here until the table has a column for it.
export const text = { kind: 'text', nullable: false };
export const textOrNull = { kind: 'text', nullable: true };
export const integer = { kind: 'integer', nullable: false };
export const integerOrNull = { kind: 'integer', nullable: true };
export const real = { kind: 'real', nullable: false };
export const realOrNull = { kind: 'real', nullable: true };
export const boolean = { kind: 'boolean', nullable: false };
export const json = { kind: 'json', nullable: false };
/** `fieldToColumn('slotDate')` → `slot_date` */
export const fieldToColumn = (field) => field.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);
/** Describes one table; `name` only where the plain snake_case name is a reserved word of SQL. */
export function describeTable(table, forms, name = fieldToColumn(table)) {
    const columns = Object.entries(forms).map(([field, form]) => ({
        field,
        name: fieldToColumn(field),
        kind: form.kind,
        nullable: form.nullable,
    }));
    return { table, name, columns, columnByField: new Map(columns.map((c) => [c.field, c])) };
}
//# sourceMappingURL=column.js.map