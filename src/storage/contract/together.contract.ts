// Many at once: changes follow one another, readers see one state.

import { describe, expect, test } from 'vitest';
import { ok } from '#core';
import type { Reader, Store } from '#studio';
import { apply, headerOf, sample, sampleLesson } from './sample-studio.contract.ts';
import { openSample, type StoreUnderTest } from './store-under-test.contract.ts';

export function describeTogether(under: StoreUnderTest): void {
  describe('many at once', () => {
    test('200 changes at once follow one another, none lost', async () => {
      const store = await openSample(under);
      const replies = await Promise.all(
        Array.from({ length: 200 }, (_, i) =>
          store.change(headerOf(`count-${i}`), async (t) => {
            const course = await t.get('course', sample.course.id);
            const revision = (course?.revision ?? 0) + 1;
            await t.put('course', { ...sample.course, revision });
            await t.put('lesson', sampleLesson(`count-${i}`, { minutes: revision }));
            return ok({ label: `Count ${revision}`, reply: revision });
          }),
        ),
      );
      const counted = replies.map((reply) => (reply.ok ? reply.value : 0)).toSorted((a, b) => a - b);
      expect(counted).toEqual(Array.from({ length: 200 }, (_, i) => i + 1));
      expect((await store.read((r) => r.get('course', sample.course.id)))?.revision).toBe(200);
      const journal = await store.read((r) => r.listChanges(200));
      expect(journal.map((change) => change.label)).toEqual(
        Array.from({ length: 200 }, (_, i) => `Count ${200 - i}`),
      );
      expect(await store.read((r) => r.list('lesson'))).toHaveLength(201);
    });

    test('failing changes among others take nothing with them', async () => {
      const store = await openSample(under);
      const results = await Promise.allSettled(
        Array.from({ length: 40 }, (_, i) =>
          apply(store, `mixed-${i}`, (t) =>
            t.put('lesson', sampleLesson(`mixed-${i}`, i % 4 === 0 ? { course: 'course:nowhere' } : {})),
          ),
        ),
      );
      expect(results.filter((result) => result.status === 'rejected')).toHaveLength(10);
      expect(await store.read((r) => r.list('lesson'))).toHaveLength(31);
    });

    test('a reader sees both halves of a change or neither, however it is timed', async () => {
      const store = await openSample(under);
      let done = false;
      const writing = (async () => {
        for (let i = 1; i <= 40; i++)
          await apply(store, `pair-${i}`, async (t) => {
            await t.put('course', { ...sample.course, revision: i });
            await t.list('course'); // the first half lies in the database
            await turn();
            await t.put('lesson', { ...sample.lesson, minutes: i });
            await t.list('lesson');
            await turn();
          });
        done = true;
      })();
      const seen: number[] = [];
      while (!done)
        await store.read(async (r) => {
          const before = await halves(r);
          await turn();
          await turn();
          expect(await halves(r)).toEqual(before); // also when a change ended in between
          expect(before[0] === before[1] || before[0] === 0).toBe(true);
          seen.push(before[0]);
        });
      await writing;
      expect(seen).toEqual(seen.toSorted((a, b) => a - b));
      expect(await store.read(halves)).toEqual([40, 40]);
    });

    test.runIf(under.readsDuringChanges)(
      'a long read does not hold a change up, nor a change a read',
      async () => {
        const store = await openSample(under);
        await store.read(async (r) => {
          expect(await halves(r)).toEqual([0, 30]);
          await setRevision(store, 'during-read', 1); // would wait for ever if the reader were in its way
          expect(await halves(r)).toEqual([0, 30]);
        });
        await apply(store, 'slow', async (t) => {
          await t.put('course', { ...sample.course, revision: 2 });
          await t.list('course');
          expect(await store.read(halves)).toEqual([1, 30]);
        });
        expect(await store.read(halves)).toEqual([2, 30]);
      },
    );

    test.runIf(under.readsDuringChanges)('a read gets its turn while a crowd of changes waits', async () => {
      const store = await openSample(under);
      let goOn = (): void => undefined;
      const held = new Promise<void>((resolve) => {
        goOn = resolve;
      });
      const first = apply(store, 'first', () => held);
      const crowd = Array.from({ length: 30 }, (_, i) => setRevision(store, `crowd-${i}`, i + 1));
      expect(await store.read(halves)).toEqual([0, 30]); // would wait for ever if the crowd held every connection
      goOn();
      await Promise.all([first, ...crowd]);
      expect(await store.read(halves)).toEqual([30, 30]);
    });

    test('many readers at once', async () => {
      const store = await openSample(under);
      const lists = await Promise.all(Array.from({ length: 60 }, () => store.read((r) => r.list('lesson'))));
      expect(lists.flat()).toHaveLength(60);
    });
  });
}

async function halves(reader: Reader): Promise<readonly [number, number]> {
  const course = await reader.get('course', sample.course.id);
  const lesson = await reader.get('lesson', sample.lesson.id);
  return [course?.revision ?? -1, lesson?.minutes ?? -1];
}

const setRevision = (store: Store, name: string, revision: number): Promise<void> =>
  apply(store, name, (t) => t.put('course', { ...sample.course, revision }));

/** Lets everything else that is ready go first. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
