// A change is whole or absent, applied once, and sees its own work; what-if leaves nothing.

import { describe, expect, test } from 'vitest';
import { err, ok } from '#core';
import type { Transactor } from '#studio';
import { apply, headerOf, sample, sampleLesson, sampleSegment } from './sample-studio.contract.ts';
import { openEmpty, openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeChanges(under: StoreUnderTest): void {
  describe('changes', () => {
    test('an err result rolls back and comes back', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const result = await store.change(headerOf('no'), async (t) => {
        await t.put('group', { ...sample.group, name: 'Not to be' });
        await t.list('group'); // by now it lies in the database
        await t.remove('slot', sample.slot.id);
        return err({ kind: 'LessonOver' as const });
      });
      expect(result).toEqual(err({ kind: 'LessonOver' }));
      expect(await store.dump()).toEqual(before);
    });

    test('a throw rolls back and goes on up', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const broken = store.change(headerOf('no'), async (t) => {
        await t.put('group', { ...sample.group, name: 'Not to be' });
        await t.list('group');
        throw new Error('a bug');
      });
      await expect(broken).rejects.toThrow('a bug');
      expect(await store.dump()).toEqual(before);
    });

    test('the same change sent again is not applied again and gets the first reply', async () => {
      const store = await openSample(under);
      const send = (name: string) =>
        store.change(headerOf('once'), async (t) => {
          await t.put('group', { ...sample.group, name });
          return ok({ label: `Named it ${name}`, reply: { name, members: [1, null, { a: true }] } });
        });
      const first = await send('First');
      expect(first).toEqual(ok({ name: 'First', members: [1, null, { a: true }] }));
      expect(await send('Second')).toEqual(first);
      expect((await store.read((r) => r.get('group', sample.group.id)))?.name).toBe('First');
      expect(await store.read((r) => r.listChanges(10))).toHaveLength(2); // the sample and this
    });

    test('two sendings at the same time are applied once', async () => {
      const store = await openSample(under);
      let applied = 0;
      const send = () =>
        store.change(headerOf('twin'), async (t) => {
          const course = await t.get('course', sample.course.id);
          await pause();
          applied++;
          await t.put('course', { ...sample.course, revision: (course?.revision ?? 0) + 1 });
          return ok({ label: 'Counted', reply: applied });
        });
      expect(await Promise.all([send(), send(), send()])).toEqual([ok(1), ok(1), ok(1)]);
      expect((await store.read((r) => r.get('course', sample.course.id)))?.revision).toBe(1);
    });

    test('a change that failed may be sent again', async () => {
      const store = await openSample(under);
      const send = (good: boolean) =>
        store.change(headerOf('again'), async (t) => {
          await t.put('group', { ...sample.group, name: 'To be' });
          return good ? ok({ label: 'Done', reply: 'done' }) : err('not yet');
        });
      expect(await send(false)).toEqual(err('not yet'));
      expect(await send(true)).toEqual(ok('done'));
    });

    test('sees its own work in get and list, before it ends', async () => {
      const store = await openSample(under);
      await apply(store, 'own', async (t) => {
        const lesson = sampleLesson('two', { note: 'first' });
        await t.put('lesson', lesson);
        expect(await t.get('lesson', lesson.id)).toEqual(lesson);
        expect(await t.list('lesson')).toEqual([sample.lesson, lesson]);
        await t.put('lesson', { ...lesson, note: 'second' });
        expect(await t.list('lesson', { where: { note: 'first' } })).toEqual([]);
        expect(await t.list('lesson', { where: { note: 'second' } })).toHaveLength(1);
        await t.remove('lesson', lesson.id);
        expect(await t.get('lesson', lesson.id)).toBeNull();
        expect(await t.list('lesson')).toEqual([sample.lesson]);
        await t.put('lesson', lesson);
        expect(await t.get('lesson', lesson.id)).toEqual(lesson);
      });
    });

    test('steps may be asked for all at once', async () => {
      const store = await openSample(under);
      await apply(store, 'at-once', async (t) => {
        const lessons = Array.from({ length: 40 }, (_, i) => sampleLesson(`many-${i}`, {}));
        await Promise.all(
          lessons.flatMap((lesson, i) => [
            t.put('lesson', lesson),
            // The sample's lesson, and each that was put before this list was asked for.
            t.list('lesson').then((found) => expect(found.length).toBeGreaterThanOrEqual(i + 2)),
            t.get('lesson', lesson.id).then((found) => expect(found).toEqual(lesson)),
          ]),
        );
      });
      expect(await store.read((r) => r.list('lesson'))).toHaveLength(41);
      await apply(store, 'two-lists', async (t) => {
        for (let i = 0; i < 100; i++) await t.put('segment', sampleSegment(`many-${i}`, {}));
        const lists = await Promise.all([t.list('segment'), t.list('segment')]); // the first writes for both
        expect(lists.map((list) => list.length)).toEqual([100, 100]);
      });
    });

    test('what-if sees its own work and leaves nothing', async () => {
      const store = await openSample(under);
      const before = await store.dump();
      const imagined = await store.imagine(async (t) => {
        await t.put('segment', sampleSegment('if', {}));
        await t.put('course', { ...sample.course, revision: 7 });
        await t.remove('slot', sample.slot.id);
        return [await t.list('segment'), await t.get('course', sample.course.id), await t.list('slot')];
      });
      expect(imagined).toEqual([[sampleSegment('if', {})], { ...sample.course, revision: 7 }, []]);
      expect(await store.dump()).toEqual(before);
      await expect(
        store.imagine(async (t) => {
          await t.put('segment', sampleSegment('if', {}));
          throw new Error('a bug');
        }),
      ).rejects.toThrow('a bug');
      expect(await store.dump()).toEqual(before);
    });

    test('a transactor or reader kept for later works no more', async () => {
      const store = await openSample(under);
      const kept: Transactor[] = [];
      await apply(store, 'keep', async (t) => void kept.push(t));
      await store.imagine(async (t) => void kept.push(t));
      await store.change(headerOf('fail'), async (t) => {
        kept.push(t);
        return err('no');
      });
      const before = await store.dump();
      for (const late of kept) {
        await expect(late.put('slot', { ...sample.slot, minutes: 60 })).rejects.toThrow(/inside its change/);
        await expect(late.list('slot')).rejects.toThrow(/inside its change/);
      }
      const reader = await store.read(async (r) => r);
      await expect(reader.list('slot')).rejects.toThrow(/while it lasts/);
      expect(await store.dump()).toEqual(before);
    });

    test('a change begun inside a change is refused, where it would wait for ever', async () => {
      const store = await openSample(under);
      const inner = () => apply(store, 'inner', async () => undefined);
      await expect(apply(store, 'outer', inner)).rejects.toThrow(/not begun inside a change/);
      await expect(store.imagine(inner)).rejects.toThrow(/not begun inside a change/);
      await inner();
      await apply(store, 'after', async () => undefined);
    });

    test.skipIf(under.readsDuringChanges)(
      'where reads and changes take turns, neither is begun inside the other',
      async () => {
        const store = await openSample(under);
        const read = () => store.read(async () => undefined);
        await expect(apply(store, 'outer', read)).rejects.toThrow(/a read is not begun inside a change/);
        await expect(store.read(read)).rejects.toThrow(/a read is not begun inside a read/);
        await expect(store.read(() => apply(store, 'inner', async () => undefined))).rejects.toThrow(
          /inside a read/,
        );
        await read();
      },
    );

    test('closing lets the change in hand end, and may be asked for twice', async () => {
      const store = await openSample(under); // closed once more when the test ends
      let tell = (): void => undefined;
      const begun = new Promise<void>((resolve) => {
        tell = resolve;
      });
      const change = apply(store, 'last', async (t) => {
        tell();
        await pause();
        await t.put('group', { ...sample.group, name: 'Last' });
        expect((await t.list('group'))[0]?.name).toBe('Last');
      });
      await begun;
      await Promise.all([store.close(), change]);
      await store.close();
      await expect(store.read((r) => r.list('group'))).rejects.toThrow();
    });

    test('an empty store has nothing, and a read that throws leaves it usable', async () => {
      const store = await openEmpty(under);
      await expect(
        store.read(async () => {
          throw new Error('a bug');
        }),
      ).rejects.toThrow('a bug');
      expect(await store.read((r) => r.get('studio', 'studio:own' as never))).toBeNull();
      expect(await store.read((r) => r.listChanges(5))).toEqual([]);
    });
  });
}

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));
