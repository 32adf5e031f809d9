import { expect, test } from 'vitest';
import { isId } from '#core';
import { browserRandom, newId } from './new-id.ts';

test('a new id has its prefix and is an id', () => {
  expect(isId('student', newId('student'))).toBe(true);
});

test('ten thousand ids differ', () => {
  expect(new Set(Array.from({ length: 10_000 }, () => newId('change'))).size).toBe(10_000);
});

test('draws lie in [0, 1) and spread', () => {
  const draws = Array.from({ length: 4_000 }, () => browserRandom.next());
  expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...draws)).toBeLessThan(1);
  const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
  // Standard error is 1/sqrt(12 · 4000) = 0.0046; six of them.
  expect(Math.abs(mean - 0.5)).toBeLessThan(0.028);
});
