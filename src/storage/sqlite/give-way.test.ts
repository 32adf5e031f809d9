import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { createFixedClock, ok, type PlainDate } from '#core';
import { createSqliteStore } from '#storage';
import { apply, headerOf, putSample, sampleLesson } from '../contract/sample-studio.contract.ts';

/** Does nothing else for longer than anybody may hold the program. */
function hold(): void {
  const until = performance.now() + 20;
  while (performance.now() < until);
}

test('while the journal is gone through, and written anew, other readers have their turn', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'levare-give-way-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const opened = await createSqliteStore({
    path: join(folder, 'studio.sqlite'),
    clock: createFixedClock('2026-03-04' as PlainDate),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const store = opened.value;
  onTestFinished(() => store.close());
  await putSample(store);
  for (let nth = 0; nth < 100; nth++)
    await apply(store, `n${nth}`, (t) => t.put('lesson', sampleLesson('two', { note: `note ${nth}` })));

  /** How often a request that comes by the network, and so not in the same breath, is answered during the work. */
  async function answeredDuring(work: Promise<unknown>): Promise<number> {
    let answered = 0;
    let isOver = false;
    const end = work.finally(() => {
      isOver = true;
    });
    while (!isOver) {
      await new Promise((turn) => setImmediate(turn));
      await store.read((r) => r.list('studio'));
      if (!isOver) answered++;
    }
    await end;
    return answered;
  }

  const walk = store.read((r) => r.eachChange(({ id }) => void (id.endsWith('5') && hold())));
  expect(await answeredDuring(walk)).toBeGreaterThan(2);
  const rewriting = store.change(headerOf('rewriting'), async (t) => {
    await t.rewriteJournal((change) => {
      if (change.id.endsWith('5')) hold();
      return { ...change, label: 'Anew' };
    });
    return ok({ label: 'Rewrote', reply: null });
  });
  expect(await answeredDuring(rewriting)).toBeGreaterThan(2);
  expect(new Set((await store.dump()).changes.map(({ label }) => label))).toEqual(new Set(['Anew']));
});
