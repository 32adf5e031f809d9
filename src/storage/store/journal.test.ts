import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ChangedRow } from '#studio';
import type { SqlValue } from '../row/row-mapping.ts';
import { openConnection } from '../sqlite/connection.ts';
import { changedRowOf, writeChange } from './journal.ts';
import { createStatements } from './statements.ts';

const { database } = openConnection(':memory:', 'write');
const statements = createStatements(database);

/** What the journal is asked to keep of the row after. */
async function keptAfter(row: ChangedRow): Promise<SqlValue> {
  let kept: SqlValue = null;
  await writeChange(
    async (text, values = []) => {
      if (text.includes('changed_row')) kept = values.at(-1) ?? null;
      return [];
    },
    statements,
    { id: 'change:x' as never, at: '', label: '', type: '', reply: null, undoneBy: null },
    [row],
  );
  return kept;
}
const imageOf = (before: unknown, after: unknown): ChangedRow => ({
  table: 'term',
  rowId: 'term:x',
  before,
  after,
});

test.each([
  ['one field differs', { id: 'a', n: 1, long: 'la' }, { id: 'a', n: 2, long: 'la' }, '[{"n":2}]'],
  [
    'nested values differ',
    { id: 'a', list: [1, { b: 2 }] },
    { id: 'a', list: [1, { b: 3 }] },
    '[{"list":[1,{"b":3}]}]',
  ],
  ['a field becomes null', { id: 'a', n: 1 }, { id: 'a', n: null }, '[{"n":null}]'],
  ['a new row', null, { id: 'a', n: 1 }, '{"id":"a","n":1}'],
  ['a row removed', { id: 'a', n: 1 }, null, null],
  ['a field more', { id: 'a' }, { id: 'a', n: 1 }, '{"id":"a","n":1}'],
  ['another field', { id: 'a', m: 1 }, { id: 'a', n: 1 }, '{"id":"a","n":1}'],
])('%s', async (_, before, after, expected) => {
  expect(await keptAfter(imageOf(before, after))).toBe(expected);
});

test('a long image is packed, and comes back as it was', async () => {
  const moved = Array.from({ length: 60 }, (_, n) => ({ title: `Étude ${n} ♭𝄞`, from: null, minutes: n }));
  const kept = String(await keptAfter(imageOf(null, { id: 'a', moved })));
  expect(kept.length).toBeLessThan(0.5 * JSON.stringify(moved).length);
  const read = { table_name: 'term', row_id: 'term:x', before: kept, after: '[{"id":"b"}]' };
  expect(changedRowOf(read)).toEqual(imageOf({ id: 'a', moved }, { id: 'b', moved }));
});

test('any two images come back', async () => {
  const json = fc.jsonValue().map((value): unknown => JSON.parse(JSON.stringify(value)));
  const fields = fc.dictionary(fc.constantFrom('id', 'n', 'long', 'list', '__proto__', 'toString'), json, {
    noNullPrototype: true,
  });
  const image = fc.oneof(fields, json);
  await fc.assert(
    fc.asyncProperty(image, image, fc.boolean(), async (before, other, same) => {
      const after = same ? before : other;
      const kept = await keptAfter(imageOf(before, after));
      const read = changedRowOf({
        table_name: 'term',
        row_id: 'term:x',
        before: before === null ? null : JSON.stringify(before),
        after: kept,
      });
      // An image that is itself a list is no row; the store never makes one.
      if (!Array.isArray(after)) expect(read).toEqual(imageOf(before, after));
    }),
    { numRuns: 500 },
  );
});
