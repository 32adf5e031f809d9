import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  compare,
  formatFraction,
  fraction,
  lcm,
  minus,
  over,
  parseFraction,
  plus,
  remainder,
  times,
} from './fraction.ts';

const anyFraction = fc
  .tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: 1, max: 96 }))
  .map(([n, d]) => fraction(n, d));

test('fractions stand in lowest terms', () => {
  expect(fraction(6, 4)).toEqual({ n: 3, d: 2 });
  expect(fraction(-6, -4)).toEqual({ n: 3, d: 2 });
  expect(fraction(0, -4)).toEqual({ n: 0, d: 1 });
  expect(() => fraction(1, 0)).toThrow();
});

test('sums, differences, products and quotients undo each other', () => {
  fc.assert(
    fc.property(anyFraction, anyFraction, (a, b) => {
      expect(minus(plus(a, b), b)).toEqual(a);
      expect(plus(a, b)).toEqual(plus(b, a));
      if (b.n !== 0) expect(times(over(a, b), b)).toEqual(a);
      expect(Math.sign(compare(a, b))).toBe(Math.sign(a.n / a.d - b.n / b.d));
      expect(parseFraction(formatFraction(a))).toEqual(a);
    }),
  );
});

test('a remainder is smaller than what it was divided by', () => {
  expect(remainder(fraction(5, 2), fraction(1))).toEqual(fraction(1, 2));
  expect(remainder(fraction(3), fraction(3, 2))).toEqual(fraction(0));
});

test('lowest common multiples', () => {
  expect([lcm(4, 3), lcm(1, 7), lcm(6, 4)]).toEqual([12, 7, 12]);
});
