// Records of every table, made from the tables' descriptions: any text, number and JSON that a record may hold.

import fc from 'fast-check';
import type { TableName, Tables } from '#studio';
import type { Column } from '../schema/column.ts';
import { tables } from '../schema/tables.ts';

/** Texts that databases are known to trip over; from memory. */
export const hardTexts: readonly string[] = [
  '',
  ' ',
  "O'Neill; drop table student; --",
  'say "forte", then `piano`',
  'back\\slash \\u0041 %s $1 ?1 :name @x',
  'line\nbreak\r\ntab\t',
  'Zoë, Åsa, Nguyễn Thị Ánh, Łukasz',
  'e\u0301 is not \u00e9',
  'مرحبا שלום こんにちは',
  '🎻👩🏽‍🎤🏴󠁧󠁢󠁥󠁮󠁧󠁿',
  '\u0001\u001f\u007f\u200b\ufeff\ufffd\uffff',
  'null',
  '0',
  '{"not":"json"}',
  'la '.repeat(40_000),
];

const text = fc
  .oneof(
    { weight: 4, arbitrary: fc.string({ unit: 'grapheme', maxLength: 40 }) },
    { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
    { weight: 1, arbitrary: fc.constantFrom(...hardTexts) },
  )
  .map((value) => value.replaceAll('\0', ''));
// JSON has no −0 and keeps no undefined.
const jsonValue = fc
  .oneof(
    fc.jsonValue(),
    fc.array(fc.record({ kind: text, minutes: fc.double({ noNaN: true, noDefaultInfinity: true }) })),
  )
  .map((value): unknown => JSON.parse(JSON.stringify(value ?? [])));
const withoutMinusZero = (value: number): number => value + 0;

const valueByKind: { readonly [K in Column['kind']]: fc.Arbitrary<unknown> } = {
  text,
  integer: fc.maxSafeInteger().map(withoutMinusZero),
  real: fc.double({ noNaN: true, noDefaultInfinity: true }).map(withoutMinusZero),
  boolean: fc.boolean(),
  json: jsonValue,
};

/** What a table's references point at: ids of rows that are there, by field. */
export type ReferenceIds = Readonly<Record<string, string>>;

/** Any record of a table, with an id of its own and references to rows that are there. */
export function arbitraryRecord<T extends TableName>(
  table: T,
  references: ReferenceIds,
): fc.Arbitrary<Tables[T]> {
  const fields: Record<string, fc.Arbitrary<unknown>> = {};
  for (const column of tables[table].columns) {
    const target = references[column.field];
    const value =
      column.field === 'id'
        ? fc.uuid().map((uuid) => `made:${uuid}`)
        : column.kind === 'text' && target !== undefined
          ? fc.constant(target)
          : valueByKind[column.kind];
    fields[column.field] = column.nullable ? fc.option(value, { nil: null }) : value;
  }
  return fc.record(fields, { noNullPrototype: true }).map((record) => record as unknown as Tables[T]); // by the description of that very table
}
