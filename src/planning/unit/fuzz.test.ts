import { expect, test } from 'vitest';
import { fuzzUnits } from '../../../bench/units/fuzz-units.ts';

test.each([7, 20261125])('2,000 mutations of a unit with seed %i lose and break nothing', (seed) => {
  const report = fuzzUnits({ count: 2_000, seed });
  expect(report.failures).toEqual([]);
  expect(report.tried).toBe(2_000);
  expect(report.accepted).toBeGreaterThan(100);
  expect(report.refused).toBeGreaterThan(100);
});
