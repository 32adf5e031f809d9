import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PlainDate } from '#core';
import { addDays } from '#core';
import type { Level } from '../skill/skill.ts';
import { daysUntilRecall, dueDate, levelToRating, recallOn, seeSkill } from './memory-card.ts';
import { rememberSkill } from './skill-memory.ts';

const day = '2026-01-05' as PlainDate;

test('[R1] levels are answers: 0 and 1 again, 2 hard, 3 good, 4 easy', () => {
  expect(([0, 1, 2, 3, 4] as const).map(levelToRating)).toEqual([1, 1, 2, 3, 4]);
});

test('[R1] the due day is the first on which recall is below what is wanted', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 4 })), {
        minLength: 1,
        maxLength: 8,
      }),
      fc.double({ min: 0.7, max: 0.97, noNaN: true }),
      (history, retention) => {
        let date = day;
        const card = history.reduce<ReturnType<typeof seeSkill> | null>((known, [gap, level]) => {
          date = addDays(date, gap);
          return seeSkill(known, date, levelToRating(level as Level));
        }, null);
        if (card === null) return;
        if (daysUntilRecall(card, retention) > 30_000) return;
        const due = dueDate(card, retention);
        expect(recallOn(card, due)).toBeLessThan(retention);
        // The library rounds recall to eight places.
        expect(recallOn(card, addDays(due, -1))).toBeGreaterThanOrEqual(retention - 1e-8);
      },
    ),
    { seed: 5, numRuns: 300 },
  );
});

test('[R1] recall is whole on the day and only falls after it', () => {
  const card = seeSkill(null, day, 3);
  expect(recallOn(card, day)).toBe(1);
  const recalls = [1, 2, 7, 30, 400].map((days) => recallOn(card, addDays(day, days)));
  expect(recalls).toEqual([...recalls].sort((a, b) => b - a));
});

test('[R2] only the last level of a day counts', () => {
  const corrected = rememberSkill([
    { date: day, level: 1 },
    { date: day, level: 3 },
  ]);
  expect(corrected).toEqual(seeSkill(null, day, 3));
});

test('[R2] a sighting without a level counts at the level that stood; before any level it does not count', () => {
  const later = addDays(day, 7);
  expect(rememberSkill([{ date: day, level: null }])).toBeNull();
  const sightings = [
    { date: later, level: null },
    { date: day, level: 2 },
    { date: addDays(day, -7), level: null },
  ] as const;
  expect(rememberSkill(sightings)).toEqual(seeSkill(seeSkill(null, day, 2), later, 2));
});
