import { expect, test } from 'vitest';
import { normalCdf, normalQuantile, overrunChance, squareLimits } from './overrun.ts';

test('Φ has the values of the handbook table', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 26.1, P(x) to 15 decimals
  const rows: readonly (readonly [number, number])[] = [
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
  ];
  for (const [x, p] of rows) {
    expect(normalCdf(x)).toBeCloseTo(p, 12);
    expect(normalCdf(-x)).toBeCloseTo(1 - p, 12);
  }
});

test('Φ⁻¹ undoes Φ', () => {
  // Abramowitz & Stegun, table 26.5: x for Q(x) = 0.05 and 0.2
  expect(normalQuantile(0.95)).toBeCloseTo(1.64485, 5);
  expect(normalQuantile(0.8)).toBeCloseTo(0.84162, 5);
  for (const x of [-2, -0.3, 0, 1.1, 3.5]) expect(normalQuantile(normalCdf(x))).toBeCloseTo(x, 9);
});

test('one block alone is a plain lognormal', () => {
  // With σ only, P(total > C) = 1 − Φ((ln(C/M) + σ²/2)/σ): exact, no approximation is left with one term.
  const chance = overrunChance(10, 100, 14, 0.3, 0);
  expect(chance).toBeCloseTo(1 - normalCdf((Math.log(1.4) + 0.045) / 0.3), 12);
});

test('no square over the limit keeps the chance, and none under it breaks it', () => {
  const z = normalQuantile(0.8);
  const limits = squareLimits(40, z, 0.3, 0.15);
  limits.forEach((limit, M) => {
    if (limit > 0) expect(overrunChance(M, limit, 40, 0.3, 0.15)).toBeLessThanOrEqual(0.2 + 1e-6);
    if (limit > 0 && limit < M * M)
      expect(overrunChance(M, limit + 1, 40, 0.3, 0.15)).toBeGreaterThan(0.2 - 1e-6);
  });
  expect(limits.length).toBe(41);
});
