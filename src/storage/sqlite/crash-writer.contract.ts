// A program for the crash test: opens the studio at the path given and writes changes without end, saying each number
// once the store has answered. It is meant to be killed.

import { once } from 'node:events';
import { createFixedClock, ok, type PlainDate } from '#core';
import { createSqliteStore } from '#storage';
import { headerOf, putSample, sample, sampleSegment } from '../contract/sample-studio.contract.ts';

await once(process.stdin, 'data'); // loaded; told to begin
const path = process.argv[2] ?? '';
const opened = await createSqliteStore({ path, clock: createFixedClock('2026-03-04' as PlainDate) });
if (!opened.ok) throw new Error(JSON.stringify(opened.error));
const store = opened.value;
if ((await store.read((r) => r.list('course'))).length === 0) await putSample(store);
const course = await store.read((r) => r.get('course', sample.course.id));
for (let revision = (course?.revision ?? 0) + 1; ; revision++) {
  await store.change(headerOf(`crash-${revision}`), async (t) => {
    await t.put('course', { ...sample.course, revision });
    for (let i = 0; i < 40; i++)
      await t.put('segment', sampleSegment(`s${i}`, { minutes: revision, note: 'n'.repeat(revision % 300) }));
    return ok({ label: `Change ${revision}`, reply: revision });
  });
  process.stdout.write(`${revision}\n`);
}
