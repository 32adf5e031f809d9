// Exact musical time: a duration or a place in a bar is a fraction of a semibreve (whole note), never a float.

import { assert } from '#core';

/** A fraction in lowest terms; `d` is positive. */
export interface Fraction {
  readonly n: number;
  readonly d: number;
}

/** Greatest common divisor of two whole numbers, not negative. */
function gcd(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** Lowest common multiple of two positive whole numbers. `lcm(4, 3)` → 12 */
export function lcm(a: number, b: number): number {
  return (a / gcd(a, b)) * b;
}

/** A fraction in lowest terms. `fraction(6, 4)` → 3/2. Whole numbers only; `d` is not 0. */
export function fraction(n: number, d = 1): Fraction {
  assert(Number.isSafeInteger(n) && Number.isSafeInteger(d) && d !== 0, `no fraction: ${n}/${d}`);
  const common = gcd(n, d) * Math.sign(d);
  return { n: n === 0 ? 0 : n / common, d: d / common };
}

export const zero: Fraction = { n: 0, d: 1 };

/** Sum of two fractions. `plus(1/2, 1/3)` → 5/6 */
export function plus(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

/** Difference of two fractions. */
export function minus(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d - b.n * a.d, a.d * b.d);
}

/** Product of two fractions. */
export function times(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.n, a.d * b.d);
}

/** Quotient of two fractions; `b` is not 0. */
export function over(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d, a.d * b.n);
}

/** Negative when a < b, 0 when equal, positive when a > b. Fits `sort`. */
export function compare(a: Fraction, b: Fraction): number {
  return a.n * b.d - b.n * a.d;
}

/** What is left of `a` after taking out whole `b`s; `a` is not negative. `remainder(5/2, 1)` → 1/2 */
export function remainder(a: Fraction, b: Fraction): Fraction {
  const whole = Math.floor((a.n * b.d) / (a.d * b.n));
  return minus(a, times(fraction(whole), b));
}

/** `3/2`, or `3` when whole. */
export function formatFraction(a: Fraction): string {
  return a.d === 1 ? String(a.n) : `${a.n}/${a.d}`;
}

/** Reads `3`, `3/2`; null for anything else or a denominator of 0. */
export function parseFraction(text: string): Fraction | null {
  const match = /^(-?\d{1,9})(?:\/(\d{1,9}))?$/.exec(text);
  if (match === null) return null;
  const d = Number(match[2] ?? 1);
  return d === 0 ? null : fraction(Number(match[1]), d);
}
