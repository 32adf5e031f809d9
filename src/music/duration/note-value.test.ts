// Lengths are held to the reference table in checks/theory; here are the laws between them.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fraction } from '../fraction/fraction.ts';
import { durationToValue, noteTypes, valueDuration } from './note-value.ts';

const anyValue = fc.record({
  type: fc.constantFrom(...noteTypes),
  dots: fc.constantFrom<0 | 1 | 2>(0, 1, 2),
});
const anyRatio = fc.constantFrom(
  null,
  { actual: 3, normal: 2 },
  { actual: 5, normal: 4 },
  { actual: 2, normal: 3 },
);

test('a duration leads back to the value it came from, in and out of tuplets', () => {
  fc.assert(
    fc.property(anyValue, anyRatio, (value, ratio) => {
      expect(durationToValue(valueDuration(value, ratio), ratio)).toEqual(value);
    }),
  );
});

test('what no single note lasts has no value', () => {
  for (const [n, d] of [
    [5, 8],
    [1, 3],
    [9, 16],
    [0, 1],
    [-1, 4],
    [1, 128],
    [3, 1024],
    [4, 1],
  ] as const)
    expect(durationToValue(fraction(n, d))).toBeNull();
});
