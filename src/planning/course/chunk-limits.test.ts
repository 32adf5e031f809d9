import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitChunks, longestGo } from './chunk-limits.ts';

test('[F9] one go is about the age in minutes, from 5 to 20', () => {
  const rows = '3:5 6:6 9:9 14:14 19:19 40:20';
  for (const row of rows.split(' ')) {
    const [age, minutes] = row.split(':').map(Number);
    expect(longestGo(age ?? 0, 2), row).toBe(minutes);
  }
  expect(longestGo(null, 2)).toBe(20);
  expect([longestGo(8, 1), longestGo(18, 1)]).toEqual([12, 20]);
});

test('[F9] the longest go gives way first, then the shortest', () => {
  expect(fitChunks(13, 7, 10, 30)).toEqual({ minChunk: 7, maxChunk: 13 });
  expect(fitChunks(13, 7, 10, 12)).toEqual({ minChunk: 6, maxChunk: 10 });
  expect(fitChunks(4, 7, 10, 30)).toEqual({ minChunk: 4, maxChunk: 4 });
  expect(fitChunks(20, 12, 7, 30)).toEqual({ minChunk: 12, maxChunk: 20 });
});

test('[F9] what is short is not split', () => {
  expect(fitChunks(10, 3, 20, 30)).toEqual({ minChunk: 10, maxChunk: 10 });
  expect(fitChunks(10, 3, 8, 30)).toEqual({ minChunk: 3, maxChunk: 8 });
  expect(fitChunks(11, 3, 20, 30)).toEqual({ minChunk: 3, maxChunk: 11 });
});

test('[F9] the demand can always be shared out within the limits', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 120 }),
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 0, max: 60 }),
      (demand, shortest, longest, room) => {
        const { minChunk, maxChunk } = fitChunks(demand, shortest, longest, room);
        expect(minChunk).toBeGreaterThanOrEqual(1);
        expect(maxChunk).toBeGreaterThanOrEqual(minChunk);
        expect(maxChunk).toBeLessThanOrEqual(Math.max(1, Math.min(room, demand)));
        const most = Math.floor(demand / minChunk);
        expect(Math.ceil(demand / maxChunk)).toBeLessThanOrEqual(most);
        // With room enough the shortest useful minutes are never given up.
        if (room >= 2 * Math.max(shortest, longest))
          expect(minChunk).toBeGreaterThanOrEqual(Math.min(shortest, demand));
      },
    ),
    { seed: 20260907, numRuns: 2000 },
  );
});
