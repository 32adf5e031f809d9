import { expect, test } from 'vitest';
import { createFixedClock, type PlainDate } from '#core';
import { defaultPacePrior } from '#planning';
import { createMemoryStore } from '#storage';
import { learnStudioPace } from './learn-studio-pace.ts';

const day = (text: string) => text as PlainDate;

test('a studio without a log starts from the usual pace, and asks again only after a week', async () => {
  const store = await createMemoryStore(createFixedClock(day('2026-11-25')));
  const first = await store.read((r) => learnStudioPace(r, null, day('2026-11-25')));
  expect(first).toEqual({ prior: defaultPacePrior, asOf: '2026-11-25' });
  const known = { prior: { mean: 0.1, between: 0.2, within: 0.3 }, asOf: day('2026-11-20') };
  expect(await store.read((r) => learnStudioPace(r, known, day('2026-11-25')))).toBe(known);
  expect((await store.read((r) => learnStudioPace(r, known, day('2026-11-27')))).asOf).toBe('2026-11-27');
});
