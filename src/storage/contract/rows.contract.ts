// Rows come back as they went in, and what cannot come back so is refused.

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tableNames, tables } from '../schema/tables.ts';
import { arbitraryRecord, hardTexts } from './arbitrary-records.contract.ts';
import { apply, sample, sampleLesson, sampleReferences, sampleSegment } from './sample-studio.contract.ts';
import { openEmpty, openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeRows(under: StoreUnderTest): void {
  describe('rows', () => {
    test.each(tableNames)('any %s comes back as it went in', async (table) => {
      const store = await openSample(under);
      let nth = 0;
      await fc.assert(
        fc.asyncProperty(
          fc.array(arbitraryRecord(table, sampleReferences), { minLength: 1, maxLength: 7 }),
          async (records) => {
            await apply(store, `put-${nth++}`, async (t) => {
              for (const record of records) await t.put(table, record);
              for (const record of records) assert.deepEqual(await t.get(table, record.id), record);
            });
            for (const record of records)
              assert.deepEqual(await store.read((r) => r.get(table, record.id)), record);
          },
        ),
        { numRuns: 25 },
      );
    });

    test.each(hardTexts.map((text) => [text.slice(0, 30), text]))('keeps the text %j', async (_, text) => {
      const store = await openSample(under);
      const lesson = sampleLesson('hard', { note: text, ongoing: [text] });
      await apply(store, 'hard', (t) => t.put('lesson', lesson));
      expect(await store.read((r) => r.list('lesson', { where: { note: text } }))).toEqual(
        [sample.lesson, lesson].filter((l) => l.note === text).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
      );
    });

    test.each([
      ['a NUL character', sampleLesson('bad', { note: 'a\0b' })],
      ['half a surrogate pair', sampleLesson('bad', { note: 'a\ud83eb' })],
      ['a number that is not finite', sampleLesson('bad', { overrun: Number.NaN })],
      ['a fraction in a whole number', sampleLesson('bad', { minutes: 30.5 })],
      ['a missing field', sampleLesson('bad', { practice: undefined })],
      ['null where there must be something', sampleLesson('bad', { date: null })],
      ['a text for a number', sampleLesson('bad', { minutes: '30' })],
      ['a field unknown to the table', { ...sampleLesson('bad', {}), colour: 'red' }],
    ])('refuses %s and writes nothing of that change', async (_, lesson) => {
      const store = await openSample(under);
      const before = await store.dump();
      await expect(
        apply(store, 'bad', async (t) => {
          await t.put('lesson', sampleLesson('good', {}));
          await t.put('lesson', lesson);
        }),
      ).rejects.toThrow(/lesson/);
      expect(await store.dump()).toEqual(before);
    });

    test('a NUL inside nested values is kept, as JSON writes it', async () => {
      const store = await openSample(under);
      const lesson = sampleLesson('nested', { ongoing: ['a\0b', 'c\ud83ed'] });
      await apply(store, 'nested', (t) => t.put('lesson', lesson));
      expect(await store.read((r) => r.get('lesson', lesson.id))).toEqual(lesson);
    });

    test('a second put replaces the row, and a removed row is gone', async () => {
      const store = await openSample(under);
      const renamed = { ...sample.student, name: 'Noor Marsh-Vale', family: null };
      await apply(store, 'rename', (t) => t.put('student', renamed));
      expect(await store.read((r) => r.list('student'))).toEqual([renamed]);
      await apply(store, 'remove', (t) => t.remove('group', sample.group.id));
      expect(await store.read((r) => r.get('group', sample.group.id))).toBeNull();
      expect(await store.read((r) => r.list('group'))).toEqual([]);
    });

    test('removing what is not there is nothing', async () => {
      const store = await openEmpty(under);
      await apply(store, 'remove', (t) => t.remove('lesson', sampleLesson('nobody', {}).id));
      expect(await store.read((r) => r.listChangedRows('change:remove' as never))).toEqual([]);
    });

    test('more rows than one statement takes', async () => {
      const store = await openSample(under);
      const segments = Array.from({ length: 333 }, (_, i) =>
        sampleSegment(String(i).padStart(4, '0'), { position: i, minutes: i / 8 }),
      );
      await apply(store, 'many', async (t) => {
        for (const segment of segments) await t.put('segment', segment);
      });
      expect(await store.read((r) => r.list('segment'))).toEqual(segments);
      await apply(store, 'fewer', async (t) => {
        for (const segment of segments) if (segment.position % 3 > 0) await t.remove('segment', segment.id);
      });
      expect(await store.read((r) => r.list('segment'))).toEqual(
        segments.filter((s) => s.position % 3 === 0),
      );
    });

    test('references must be there when the change ends, in whatever order rows are written', async () => {
      const store = await openEmpty(under);
      await apply(store, 'backwards', async (t) => {
        for (const table of [...tableNames].reverse()) {
          const row = (sample as Partial<Record<typeof table, { readonly id: string }>>)[table];
          if (row) await t.put(table, row as never); // a row of that very table
        }
      });
      expect((await store.dump()).tables.lesson).toEqual([sample.lesson]);
    });

    test.each([
      ['a row that refers to nothing', 'lesson', sampleLesson('lost', { course: 'course:nowhere' })],
      ['a slot that is not there', 'lesson', sampleLesson('lost', { slot: 'slot:nowhere' })],
      ['a lesson that is not there', 'segment', sampleSegment('lost', { lesson: 'lesson:nowhere' })],
      ['a skill that is not there', 'segment', sampleSegment('lost', { skill: 'skill:nowhere' })],
    ] as const)('refuses %s and writes nothing of that change', async (_, table, row) => {
      const store = await openSample(under);
      const before = await store.dump();
      const lost = apply(store, 'lost', async (t) => {
        await t.put('group', { ...sample.group, name: 'Not to be' });
        await t.put(table, row);
      });
      await expect(lost).rejects.toThrow(/foreign key/i);
      expect(await store.dump()).toEqual(before);
      await apply(store, 'after', (t) => t.put('group', { ...sample.group, name: 'To be' }));
    });

    test('refuses to remove a row that others refer to', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      await expect(apply(store, 'cut', (t) => t.remove('course', sample.course.id))).rejects.toThrow(
        /foreign key/i,
      );
      expect(await store.dump()).toEqual(before);
    });

    test('every table has a description whose columns it has', async () => {
      const store = await openEmpty(under);
      for (const table of tableNames)
        expect(await store.read((r) => r.list(table)), tables[table].name).toEqual([]);
    });
  });
}
