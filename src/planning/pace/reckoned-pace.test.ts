import { expect, test } from 'vitest';
import { defaultPacePrior } from '../course/default-settings.ts';
import { reckonPace } from './reckoned-pace.ts';
import type { PaceObservation } from './student-pace.ts';

const work = (ratio: number): PaceObservation => ({
  area: 'rhythm',
  actual: 10 * ratio,
  covered: 10,
  usual: 10,
});
const after = (...ratios: readonly number[]) => reckonPace(ratios.map(work), defaultPacePrior)('rhythm');

test('[F20] nothing logged is the usual pace', () => {
  expect(after()).toBe(1);
});

test('[F20] one piece of work is at most one step of 5 %, whatever it says', () => {
  expect(after(0.4)).toBe(0.95);
  expect(after(2.5)).toBe(1.05);
  // A quarter longer is within what one piece of work can tell.
  expect(after(1.25)).toBe(1);
  expect(after(1.25, 1.25, 1.25)).toBeGreaterThan(1);
});

test('[F20] what is seen again and again is followed, step by step', () => {
  const steady = Array.from({ length: 30 }, () => 1.5);
  const paces = steady.map((_, at) => after(...steady.slice(0, at + 1)));
  paces.forEach((pace, at) => {
    expect(pace).toBeCloseTo(Math.min(1 + 0.05 * (at + 1), pace), 10);
    expect(pace).toBeGreaterThanOrEqual(paces[at - 1] ?? 1);
  });
  expect(paces[7]).toBeGreaterThanOrEqual(1.3);
  expect(paces.at(-1)).toBeGreaterThanOrEqual(1.4);
  expect(paces.at(-1)).toBeLessThanOrEqual(1.5);
});

test('[F20] other areas follow the student’s pace, and work of no minutes says nothing', () => {
  const log = Array.from({ length: 6 }, () => work(1.6));
  expect(reckonPace(log, defaultPacePrior)('reading')).toBeGreaterThanOrEqual(1.1);
  const nothing = { ...work(1), actual: 0 };
  expect(reckonPace([...log, nothing, nothing], defaultPacePrior)('rhythm')).toBe(
    reckonPace(log, defaultPacePrior)('rhythm'),
  );
});
