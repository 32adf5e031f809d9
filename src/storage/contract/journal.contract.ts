// The journal: what each change touched, from first to last; enough to undo it, or to tell the studio's whole story.

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { err, ok } from '#core';
import type { ChangeId, Store, TableName } from '#studio';
import { tableNames, unjournalled } from '../schema/tables.ts';
import { apply, headerOf, sample, sampleLesson, sampleSegment } from './sample-studio.contract.ts';
import { openEmpty, openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeJournal(under: StoreUnderTest): void {
  describe('journal', () => {
    test('keeps the header, the label, the reply, and each row before and after, in order', async () => {
      const store = await openSample(under);
      const lesson = sampleLesson('two', { note: 'a "quoted" 🎻 note' });
      const moved = { ...sample.slot, time: '17:00' as typeof sample.slot.time };
      await store.change(headerOf('full'), async (t) => {
        await t.put('slot', moved);
        await t.put('lesson', lesson);
        await t.remove('group', sample.group.id);
        return ok({ label: "Moved Noor's lesson", reply: { lesson: lesson.id } });
      });
      expect(await store.read((r) => r.getChange(idOf('full')))).toEqual({
        ...headerOf('full'),
        label: "Moved Noor's lesson",
        reply: { lesson: lesson.id },
        undoneBy: null,
      });
      expect(await rowsOf(store, 'full')).toEqual([
        { table: 'slot', rowId: 'slot:one', before: sample.slot, after: moved },
        { table: 'lesson', rowId: 'lesson:two', before: null, after: lesson },
        { table: 'group', rowId: 'group:one', before: sample.group, after: null },
      ]);
    });

    test('keeps nothing of a sound, so that deleting it leaves no copy', async () => {
      const store = await openSample(under);
      await apply(store, 'sound', async (t) => {
        await t.put('soundData', { id: 'sound-data:one', sound: sample.sound.id, data: 'UklGRg==' } as never);
        await t.put('sound', { ...sample.sound, bytes: 4 });
      });
      expect(await rowsOf(store, 'sound')).toEqual([]);
      expect(await store.read((r) => r.list('soundData'))).toMatchObject([{ data: 'UklGRg==' }]);
      await apply(store, 'silence', async (t) => {
        await t.remove('soundData', 'sound-data:one' as never);
        await t.put('take', { ...sample.take, sound: null });
        await t.remove('sound', sample.sound.id);
      });
      expect((await rowsOf(store, 'silence')).map((row) => row.table)).toEqual(['take']);
      expect(JSON.stringify(await store.dump())).not.toContain('UklGRg==');
    });

    test('folds many writes of one row into first before and last after', async () => {
      const store = await openSample(under);
      const note = (text: string) => ({ ...sample.lesson, note: text });
      await apply(store, 'fold', async (t) => {
        await t.put('lesson', note('one'));
        await t.list('lesson');
        await t.put('lesson', note('two'));
        await t.remove('lesson', sample.lesson.id);
        await t.list('lesson');
        await t.put('lesson', note('three'));
      });
      expect(await rowsOf(store, 'fold')).toEqual([
        { table: 'lesson', rowId: 'lesson:one', before: sample.lesson, after: note('three') },
      ]);
    });

    test('leaves out what is as it was', async () => {
      const store = await openSample(under);
      await apply(store, 'idle', async (t) => {
        await t.put('student', { ...sample.student });
        await t.put('course', { ...sample.course, settings: turnedAround(sample.course.settings) }); // other key order
        await t.put('lesson', { ...sample.lesson, note: 'away' });
        await t.list('lesson');
        await t.put('lesson', sample.lesson); // and back
        await t.put('segment', sampleSegment('brief', {}));
        await t.list('segment');
        await t.remove('segment', sampleSegment('brief', {}).id);
      });
      expect(await rowsOf(store, 'idle')).toEqual([]);
      expect(await store.read((r) => r.getChange(idOf('idle')))).toMatchObject({ reply: 'idle' });
    });

    test('newest first, as many as wanted, none of what failed', async () => {
      const store = await openEmpty(under);
      for (const name of ['a', 'b', 'c', 'd']) await apply(store, name, async () => undefined);
      await store.change(headerOf('e'), async () => err('no'));
      const names = async (most: number) =>
        (await store.read((r) => r.listChanges(most)))
          .map((change) => change.id.slice('change:'.length))
          .join('');
      expect(await names(10)).toBe('dcba');
      expect(await names(2)).toBe('dc');
      expect(await names(0)).toBe('');
      expect(await store.read((r) => r.getChange(idOf('e')))).toBeNull();
    });

    test('undoing: the images bring back the studio as it was, and the change is marked', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      await apply(store, 'much', async (t) => {
        await t.remove('lesson', sample.lesson.id);
        await t.remove('courseUnit', sample.courseUnit.id);
        await t.put('student', { ...sample.student, name: 'Someone' });
        for (let i = 0; i < 9; i++) await t.put('lesson', sampleLesson(`new-${i}`, {}));
        for (let i = 0; i < 90; i++)
          await t.put(
            'segment',
            sampleSegment(`new-${i}`, { lesson: `lesson:new-${i % 9}`, courseUnit: null }),
          );
      });
      await undo(store, 'much', 'undo');
      expect((await store.dump()).tables).toEqual(before.tables);
      expect(await store.read((r) => r.getChange(idOf('much')))).toMatchObject({ undoneBy: 'change:undo' });
      expect(await store.read((r) => r.getChange(idOf('undo')))).toMatchObject({ undoneBy: null });
    });

    test('only a change that is there can be undone, and only by the change in hand', async () => {
      const store = await openSample(under);
      await expect(apply(store, 'x', (t) => t.markUndone(idOf('nowhere'), idOf('x')))).rejects.toThrow(
        /nowhere/,
      );
      await expect(apply(store, 'x', (t) => t.markUndone(idOf('sample'), idOf('y')))).rejects.toThrow(
        /in hand/,
      );
      await store.imagine((t) => t.markUndone(idOf('sample'), idOf('x')));
      expect(await store.read((r) => r.getChange(idOf('sample')))).toMatchObject({ undoneBy: null });
    });

    test('a change sees the journal as it was, without itself', async () => {
      const store = await openSample(under);
      await apply(store, 'look', async (t) => {
        expect(await t.getChange(idOf('look'))).toBeNull();
        expect((await t.listChanges(5)).map((change) => change.id)).toEqual(['change:sample']);
        expect(await t.listChangedRows(idOf('sample'))).toHaveLength(10);
      });
    });

    test('any story: every step agrees with a model, and the journal tells the whole of it', async () => {
      const store = await openSample(under);
      let nth = 0;
      await fc.assert(
        fc.asyncProperty(fc.array(story, { minLength: 1, maxLength: 4 }), async (changes) => {
          const model = new Map((await store.dump()).tables.term.map((term) => [term.id as string, term]));
          for (const { steps, ends } of changes) {
            const draft = new Map(model);
            await store
              .change(headerOf(`story-${nth++}`), async (t) => {
                for (const step of steps) {
                  const id = `term:${step.row}` as never;
                  if (step.act === 'put') {
                    const term = { id, name: step.name, starts: '2026-01-01', ends: '2026-02-01' } as never;
                    draft.set(id, term);
                    await t.put('term', term);
                  } else if (step.act === 'remove') {
                    draft.delete(id);
                    await t.remove('term', id);
                  } else if (step.act === 'get')
                    assert.deepEqual(await t.get('term', id), draft.get(id) ?? null);
                  else assert.deepEqual(await t.list('term'), sorted(draft));
                }
                if (ends === 'throw') throw new Error('as told');
                return ends === 'err' ? err('as told') : ok({ label: '', reply: null });
              })
              .catch((error: unknown) => assert.match(String(error), /as told/));
            if (ends !== 'ok') continue;
            model.clear();
            for (const [id, term] of draft) model.set(id, term);
          }
          const dump = await store.dump();
          assert.deepEqual(dump.tables.term, sorted(model));
          assert.deepEqual(replay(dump.changes.flatMap((change) => change.rows)), inTables(dump.tables));
        }),
        { numRuns: 40 },
      );
    });
  });
}

const few = fc.integer({ min: 0, max: 4 });
const story = fc.record({
  steps: fc.array(
    fc.record({
      act: fc.constantFrom('put', 'put', 'remove', 'get', 'list'),
      row: few,
      name: few.map(String),
    }),
    { maxLength: 10 },
  ),
  ends: fc.constantFrom('ok', 'ok', 'ok', 'err', 'throw'),
});

const idOf = (name: string) => `change:${name}` as ChangeId;
const rowsOf = (store: Store, name: string) => store.read((r) => r.listChangedRows(idOf(name)));
const sorted = <T>(rows: ReadonlyMap<string, T>): readonly T[] =>
  [...rows].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
const turnedAround = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).toReversed()) as T;

/** Puts every row of a change back, as the studio's rules do. */
async function undo(store: Store, name: string, by: string): Promise<void> {
  await apply(store, by, async (t) => {
    for (const row of await t.listChangedRows(idOf(name)))
      if (row.before === null) await t.remove(row.table, row.rowId as never);
      else await t.put(row.table, row.before as never);
    await t.markUndone(idOf(name), idOf(by));
  });
}

/** The rows that the journal's images lead to, each image fitting on the one before. */
function replay(rows: readonly { table: TableName; rowId: string; before: unknown; after: unknown }[]) {
  const there = new Map<string, unknown>();
  for (const { table, rowId, before, after } of rows) {
    const key = `${table} ${rowId}`;
    assert.deepEqual(there.get(key) ?? null, before);
    if (after === null) there.delete(key);
    else there.set(key, after);
  }
  return Object.fromEntries(there);
}

const inTables = (tables: { readonly [T in TableName]: readonly { readonly id: string }[] }) =>
  Object.fromEntries(
    tableNames
      .filter((table) => !unjournalled.has(table))
      .flatMap((table) => tables[table].map((row) => [`${table} ${row.id}`, row])),
  );
