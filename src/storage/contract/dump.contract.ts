// The whole studio out and in again, nothing lost.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ok } from '#core';
import type { StudioDump } from '#studio';
import { tableNames } from '../schema/tables.ts';
import { arbitraryRecord } from './arbitrary-records.contract.ts';
import { apply, headerOf, sample, sampleLesson, sampleReferences } from './sample-studio.contract.ts';
import { openEmpty, openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeDump(under: StoreUnderTest): void {
  describe('dump and load', () => {
    test('a full studio goes into an empty store and comes out the same', async () => {
      const store = await openSample(under);
      for (const table of tableNames)
        await apply(store, `fill-${table}`, async (t) => {
          for (const record of fc.sample(arbitraryRecord(table, sampleReferences), {
            numRuns: 40,
            seed: 2026,
          }))
            await t.put(table, record);
        });
      await store.change(headerOf('undo'), async (t) => {
        await t.markUndone('change:fill-term' as never, 'change:undo' as never);
        for (const term of await t.list('term')) await t.remove('term', term.id);
        return ok({ label: 'Took the terms back', reply: undefined });
      });
      const dump = await store.dump();
      expect(dump.changes).toHaveLength(tableNames.length + 2);
      const text = JSON.stringify(dump); // a file in between, as in the export

      const other = await openEmpty(under);
      expect(await other.load(JSON.parse(text))).toEqual(ok(null));
      expect(await other.dump()).toEqual(dump);
      expect(JSON.stringify(await other.dump())).toBe(text);
      await apply(other, 'goes-on', (t) => t.put('lesson', sampleLesson('on', {})));
      expect((await other.read((r) => r.listChanges(1)))[0]?.id).toBe('change:goes-on');
    });

    test('an empty store gives an empty dump', async () => {
      const store = await openEmpty(under);
      const dump = await store.dump();
      expect(dump.format).toBe('levare-studio/1');
      expect(dump.changes).toEqual([]);
      expect(Object.keys(dump.tables).toSorted()).toEqual(tableNames.toSorted());
      expect(Object.values<readonly unknown[]>(dump.tables).flat()).toEqual([]);
      expect(await store.load(dump)).toEqual(ok(null));
    });

    test('a store with anything in it is left as it is', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const loaded = await store.load(before);
      expect(loaded).toEqual({ ok: false, error: { kind: 'StoreNotEmpty', rows: 12 } });
      expect(await store.dump()).toEqual(before);
      const idle = await openEmpty(under);
      await apply(idle, 'idle', async () => undefined);
      expect(await idle.load(before)).toMatchObject({ error: { kind: 'StoreNotEmpty', rows: 1 } });
    });

    test.each([
      ['a reference to nothing', (d: StudioDump) => ({ ...d, tables: { ...d.tables, student: [] } })],
      [
        'a row twice',
        (d: StudioDump) => ({ ...d, tables: { ...d.tables, slot: [sample.slot, sample.slot] } }),
      ],
      [
        'a bad field',
        (d: StudioDump) => ({ ...d, tables: { ...d.tables, slot: [{ ...sample.slot, minutes: 1.5 }] } }),
      ],
      ['a change twice', (d: StudioDump) => ({ ...d, changes: [...d.changes, ...d.changes] })],
    ])('a dump with %s leaves the store empty', async (_, spoil) => {
      const dump = await (await openSample(under)).dump();
      const store = await openEmpty(under);
      await expect(store.load(spoil(dump))).rejects.toThrow();
      expect(await store.load(dump)).toEqual(ok(null));
      expect(await store.dump()).toEqual(dump);
    });
  });
}
