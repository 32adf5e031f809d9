// Lists: what is asked for, in the order asked for, the same on every database.

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LessonRecord, Query } from '#studio';
import { arbitraryRecord } from './arbitrary-records.contract.ts';
import { apply, sample, sampleLesson, sampleReferences } from './sample-studio.contract.ts';
import { openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeQueries(under: StoreUnderTest): void {
  describe('queries', () => {
    const lessons = [
      sampleLesson('a', { date: '2026-03-09', status: 'taught', minutes: 45, barred: true }),
      sampleLesson('b', { date: '2026-03-02', status: 'taught', slot: 'slot:one', slotDate: '2026-03-02' }),
      sampleLesson('c', { date: '2026-03-09', status: 'planned', slot: 'slot:one', slotDate: '2026-03-09' }),
      sampleLesson('d', { date: '2026-03-16', status: 'planned', overrun: 0.25 }),
    ];
    const ask = async (query: unknown): Promise<string> => {
      const store = await openSample(under);
      await apply(store, 'lessons', async (t) => {
        await t.remove('lesson', sample.lesson.id);
        for (const lesson of lessons) await t.put('lesson', lesson);
      });
      // Queries are written with plain texts here, where records have branded ones.
      const found = await store.read((r) => r.list('lesson', query as Query<'lesson'>));
      return found.map((lesson) => lesson.id.slice('lesson:'.length)).join('');
    };

    test.each([
      ['nothing asked: all, by id', {}, 'abcd'],
      ['text', { where: { status: 'taught' } }, 'ab'],
      ['number', { where: { minutes: 45 } }, 'a'],
      ['fraction', { where: { overrun: 0.25 } }, 'd'],
      ['true', { where: { barred: true } }, 'a'],
      ['false', { where: { barred: false } }, 'bcd'],
      ['null', { where: { slot: null } }, 'ad'],
      ['several at once', { where: { slot: 'slot:one', status: 'planned', slotDate: '2026-03-09' } }, 'c'],
      ['null and text', { where: { slot: null, status: 'planned' } }, 'd'],
      ['none fits', { where: { status: 'missed' } }, ''],
      ['from, included', { range: { column: 'date', from: '2026-03-09' } }, 'acd'],
      ['to, included', { range: { column: 'date', to: '2026-03-09' } }, 'abc'],
      ['from and to', { range: { column: 'date', from: '2026-03-03', to: '2026-03-15' } }, 'ac'],
      ['a range leaves null out', { range: { column: 'slotDate', from: '' } }, 'bc'],
      ['a range without ends is none', { range: { column: 'date' } }, 'abcd'],
      [
        'where and range',
        { where: { status: 'taught' }, range: { column: 'date', from: '2026-03-05' } },
        'a',
      ],
      ['order, ties by id', { orderBy: ['date'] }, 'bacd'],
      ['order by two', { orderBy: ['status', 'date'] }, 'cdba'],
      ['null comes first', { orderBy: ['slotDate'] }, 'adbc'],
      ['false comes before true', { orderBy: ['barred'] }, 'bcda'],
      ['numbers by value', { orderBy: ['overrun', 'minutes'] }, 'bcad'],
    ])('%s', async (_, query, expected) => {
      expect(await ask(query)).toBe(expected);
    });

    test.each([
      ['a field that is not there', { where: { colour: 'red' } }],
      ['nested values', { where: { ongoing: [] } }],
      ['an undefined value, which would ask for all', { where: { status: undefined } }],
      ['a range over numbers', { range: { column: 'minutes', from: '1' } }],
      ['order by nested values', { orderBy: ['ongoing'] }],
    ])('refuses %s', async (_, query) => {
      await expect(ask(query)).rejects.toThrow(/invariant/);
    });

    test('texts sort by code point, whatever the language', async () => {
      const store = await openSample(under);
      const names = ['', ' ', '10', '9', 'A', 'Z', 'a', 'b', 'ä', 'é', 'ł', 'あ', '\ufffd', '😀'];
      await apply(store, 'names', async (t) => {
        for (const name of names.toReversed())
          await t.put('term', {
            id: `term:${names.length - names.indexOf(name)}`,
            name,
            starts: '2026-01-01',
            ends: '2026-02-01',
          } as never);
      });
      expect(
        (await store.read((r) => r.list('term', { orderBy: ['name'] }))).map((term) => term.name),
      ).toEqual(names);
    });

    test('any list agrees with filtering and sorting by hand', async () => {
      const store = await openSample(under);
      const few = <T>(...values: readonly T[]) => fc.constantFrom(...values);
      const lesson = fc
        .tuple(
          arbitraryRecord('lesson', sampleReferences),
          fc.record({
            status: few('taught', 'planned'),
            minutes: few(30, 45),
            date: few('2026-01-01', '2026-01-02', '2026-01-03'),
          }),
        )
        .map(([record, fields]) => ({ ...record, ...fields }) as LessonRecord);
      const query = fc.record(
        {
          where: fc.record(
            {
              status: few('taught', 'planned'),
              minutes: few(30, 45),
              slot: few('slot:one', null),
              barred: fc.boolean(),
            },
            { requiredKeys: [] },
          ),
          range: fc.record(
            {
              column: few('date', 'note', 'slotDate'),
              from: few('2026-01-02', 'a', ''),
              to: few('2026-01-02', 'é'),
            },
            { requiredKeys: ['column'] },
          ),
          orderBy: fc.subarray(['date', 'note', 'status', 'minutes', 'overrun', 'slotDate', 'barred']),
        },
        { requiredKeys: [] },
      );
      let nth = 0;
      await fc.assert(
        fc.asyncProperty(
          fc.array(lesson, { maxLength: 12 }),
          fc.array(query, { minLength: 1, maxLength: 5 }),
          async (lessons, queries) => {
            await apply(store, `refill-${nth++}`, async (t) => {
              for (const old of await t.list('lesson')) await t.remove('lesson', old.id);
              for (const each of lessons) await t.put('lesson', each);
            });
            for (const asked of queries as unknown as Query<'lesson'>[])
              assert.deepEqual(await store.read((r) => r.list('lesson', asked)), byHand(lessons, asked));
          },
        ),
        { numRuns: 40 },
      );
    });
  });
}

function byHand(lessons: readonly LessonRecord[], query: Query<'lesson'>): readonly LessonRecord[] {
  const { where = {}, range, orderBy = [] } = query;
  const fits = (lesson: LessonRecord): boolean => {
    const values = lesson as unknown as Record<string, unknown>;
    if (!Object.entries(where).every(([field, value]) => values[field] === value)) return false;
    if (range === undefined || (range.from === undefined && range.to === undefined)) return true;
    const value = values[range.column];
    if (typeof value !== 'string') return false;
    return (
      (range.from === undefined || compare(value, range.from) >= 0) &&
      (range.to === undefined || compare(value, range.to) <= 0)
    );
  };
  return lessons.filter(fits).toSorted((a, b) => {
    for (const field of [...orderBy, 'id' as const]) {
      const order = compare(a[field], b[field]);
      if (order !== 0) return order;
    }
    return 0;
  });
}

/** Null, then numbers and booleans by value, texts by code point. */
function compare(a: unknown, b: unknown): number {
  if (a === null || b === null) return Number(b === null) - Number(a === null);
  if (typeof a === 'string' && typeof b === 'string') return Buffer.compare(Buffer.from(a), Buffer.from(b));
  return Number(a) - Number(b);
}
