// What has to be gone is gone: the journal written anew, old changes dropped, the file compacted, and a student erased with
// all of it.

import { describe, expect, test } from 'vitest';
import { ok } from '#core';
import { type ChangeId, eraseInCopy, type JournalledChange, type Store } from '#studio';
import { apply, headerOf, sample, sampleLesson, sampleSegment } from './sample-studio.contract.ts';
import { openSample, type StoreUnderTest } from './store-under-test.contract.ts';

const idOf = (name: string) => `change:${name}` as ChangeId;
const changesOf = async (store: Store) => (await store.dump()).changes;

export function describeErasing(under: StoreUnderTest): void {
  describe('erasing', () => {
    test('the journal is gone through in the order of making, however long it is', async () => {
      const store = await openSample(under);
      for (let nth = 0; nth < 150; nth++)
        await apply(store, `n${nth}`, (t) => t.put('lesson', sampleLesson('two', { note: `note ${nth}` })));
      const seen: JournalledChange[] = [];
      await store.read((r) => r.eachChange((change) => void seen.push(change)));
      expect(seen).toEqual(await changesOf(store));
      expect(seen).toHaveLength(151);
    });

    test('the journal is written anew, with the change in hand; what comes back as it was is left alone', async () => {
      const store = await openSample(under);
      await apply(store, 'secret', (t) => t.put('lesson', sampleLesson('two', { note: 'a secret' })));
      await apply(store, 'other', (t) => t.put('lesson', sampleLesson('three', { note: 'no secret' })));
      await apply(store, 'undoing', (t) => t.markUndone(idOf('secret'), idOf('undoing')));
      const before = await changesOf(store);
      const given: string[] = [];
      await store.change(headerOf('rewriting'), async (t) => {
        await t.put('lesson', sampleLesson('two', { note: 'still a secret' }));
        await t.rewriteJournal((change) => {
          given.push(change.id);
          if (change.id === idOf('secret'))
            return { ...change, label: 'Gone', type: 'gone', reply: null, undoneBy: null, rows: [] };
          return change.id === idOf('rewriting') ? { ...change, rows: [] } : change;
        });
        return ok({ label: 'Rewrote', reply: 7 });
      });
      expect(given.map((id) => id.slice(7))).toEqual(['sample', 'secret', 'other', 'undoing', 'rewriting']);
      const after = await changesOf(store);
      expect(after.map(({ id }) => id)).toEqual([...before.map(({ id }) => id), idOf('rewriting')]);
      expect(after[1]).toMatchObject({ id: idOf('secret'), label: 'Gone', undoneBy: null, rows: [] });
      expect([after[0], after[2], after[3]]).toEqual([before[0], before[2], before[3]]);
      expect(after[4]).toMatchObject({ label: 'Rewrote', reply: 7, rows: [] });
      // An id that was applied counts once all the same.
      expect(await store.change(headerOf('secret'), () => Promise.reject(new Error('twice')))).toEqual(
        ok(null),
      );
    });

    test('a change that fails, and what-if, leave the journal as it was', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const rewrite = (change: JournalledChange) => ({ ...change, label: 'Gone', rows: [] });
      await store.imagine((t) => t.rewriteJournal(rewrite));
      await expect(
        apply(store, 'fails', async (t) => {
          await t.rewriteJournal(rewrite);
          throw new Error('no');
        }),
      ).rejects.toThrow('no');
      expect(await store.dump()).toEqual(before);
    });

    test('old changes are dropped up to the first that is not old, and what is kept stands', async () => {
      const store = await openSample(under);
      const at = (name: string, day: string) =>
        store.change({ ...headerOf(name), at: `${day}T10:00:00.000Z` }, async (t) => {
          await t.put('lesson', sampleLesson('two', { note: name }));
          if (name === 'd') await t.markUndone(idOf('c'), idOf('d'));
          return ok({ label: name, reply: name });
        });
      // The clock of the machine was put back after `b`.
      for (const [name, day] of [
        ['a', '2026-03-05'],
        ['b', '2027-01-01'],
        ['c', '2026-03-06'],
        ['d', '2026-03-07'],
      ] as const)
        await at(name, day);
      const { tables } = await store.dump();
      expect(await store.forgetChanges('2026-03-06T00:00:00.000Z')).toBe(2);
      expect((await changesOf(store)).map(({ label }) => label).join('')).toBe('bcd');
      expect((await store.dump()).tables).toEqual(tables);
      expect(await store.forgetChanges('2026-03-06T00:00:00.000Z')).toBe(0);
      expect(await store.forgetChanges('2028-01-01T00:00:00.000Z')).toBe(3);
      expect(await changesOf(store)).toEqual([]);
      expect((await store.dump()).tables).toEqual(tables);
      await at('on', '2026-03-08');
      expect((await changesOf(store)).map(({ label }) => label)).toEqual(['on']);
    });

    test('compacting waits for nobody for ever, keeps every row, and the store goes on', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const reads = Array.from({ length: 6 }, () => store.read((r) => r.list('lesson')));
      const compacted = store.compact();
      const later = store.read((r) => r.list('student'));
      expect(await compacted).toEqual(ok(null));
      expect((await Promise.all(reads)).flat()).toHaveLength(6);
      expect(await later).toHaveLength(1);
      expect(await store.dump()).toEqual(before);
      await apply(store, 'on', (t) => t.put('lesson', sampleLesson('two', {})));
    });

    test('of a student who is erased nothing is left in any row, label, reply or image', async () => {
      const store = await openSample(under);
      const other = { ...sample.student, id: 'student:two', name: 'Tom Reed', family: null } as never;
      await store.change(headerOf('joins'), async (t) => {
        await t.put('student', other);
        await t.put('soundData', { id: 'sound-data:one', sound: sample.sound.id, data: 'Tm9vcg==' } as never);
        // Long enough to be packed in the journal.
        await t.put('segment', sampleSegment('long', { note: 'Noor plays. '.repeat(200) }));
        await t.put('lesson', sampleLesson('one', { absent: ['student:one', 'student:two'] }));
        return ok({ label: 'Noor Marsh joins', reply: { notices: ['Noor Marsh is here'] } });
      });
      await apply(store, 'moves', async (t) => {
        await t.put('segment', sampleSegment('long', { note: 'Noor plays well. '.repeat(200), position: 1 }));
        await t.put('student', { ...(other as typeof sample.student), note: 'Sits beside Noor Marsh.' });
      });
      const traces = [
        'Noor',
        'Marsh',
        'student:one',
        'course:one',
        'take:one',
        'sound:one',
        'Tm9vcg==',
        'lesson:one',
      ];
      const text = JSON.stringify(await store.dump());
      expect(traces.filter((trace) => text.includes(trace))).toEqual(traces);
      const command = {
        type: 'student.erase' as const,
        seen: 1,
        student: sample.student.id,
        name: '',
        called: [],
        keep: [],
        copies: true,
      };
      expect(
        await eraseInCopy(store, { id: 'change:erase', command } as never, '2026-03-05T10:00:00.000Z'),
      ).toBe(true);
      const dump = await store.dump();
      const left = JSON.stringify(dump);
      expect(traces.filter((trace) => left.includes(trace))).toEqual([]);
      expect(dump.tables.student).toEqual([
        { ...(other as typeof sample.student), revision: 2, note: 'Sits beside [name erased].' },
      ]);
      expect([dump.tables.unit, dump.tables.skill]).toEqual([[sample.unit], [sample.skill]]);
      expect(dump.changes.map(({ id }) => id)).toContain('change:sample'); // sent again, it counts once
      expect(
        await eraseInCopy(store, { id: 'change:again', command } as never, '2026-03-05T11:00:00.000Z'),
      ).toBe(false);
    });
  });
}
