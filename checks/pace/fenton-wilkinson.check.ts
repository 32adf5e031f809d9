// Source: L. F. Fenton 1960 (README.md). The expected numbers are printed by this program, Python 3 standard library:
//
//   import math; from statistics import NormalDist
//   def chance(blocks, C, s, t):
//       mean = sum(blocks)
//       second = sum(a*b*math.exp(t*t)*(math.exp(s*s) if i == j else 1)
//                    for i, a in enumerate(blocks) for j, b in enumerate(blocks))
//       v = math.log(1 + (second - mean**2)/mean**2); mu = math.log(mean) - v/2
//       return mean, second - mean**2, 1 - NormalDist().cdf((math.log(C) - mu)/math.sqrt(v))

import { expect, test } from 'vitest';
import { createSeededRandom, randomNormal } from '#core';
import { normalCdf, normalQuantile, overrunChance, squareLimits } from '#planning';

interface Row {
  readonly blocks: readonly number[];
  readonly room: number;
  readonly sigma: number;
  readonly tau: number;
  readonly variance: number;
  readonly chance: number;
}
const rows: readonly Row[] = [
  { blocks: [3, 15, 12], room: 40, sigma: 0.3, tau: 0.15, variance: 56.887441, chance: 0.0992551592 },
  { blocks: [5, 17], room: 25, sigma: 0.3, tau: 0.15, variance: 41.257044, chance: 0.277609701 },
  { blocks: [20], room: 25, sigma: 0.3, tau: 0, variance: 37.669713, chance: 0.1857112872 },
  { blocks: [4, 6, 6, 8], room: 30, sigma: 0.5, tau: 0.2, variance: 68.440747, chance: 0.2022846015 },
  { blocks: [10, 10], room: 40, sigma: 0.3, tau: 0.15, variance: 28.365458, chance: 0.0027261721 },
];
const sumOf = (blocks: readonly number[], power: number) => blocks.reduce((sum, m) => sum + m ** power, 0);
const chanceOf = ({ blocks, room, sigma, tau }: Row) =>
  overrunChance(sumOf(blocks, 1), sumOf(blocks, 2), room, sigma, tau);

test('worked values', () => {
  for (const row of rows) expect(chanceOf(row), JSON.stringify(row.blocks)).toBeCloseTo(row.chance, 8);
});

test('one block alone is lognormal exactly: values from the table of Φ', () => {
  // P = 1 − Φ((ln(C/m) + σ²/2)/σ). With σ = 0.5 and C/m = e^(0.5·1.6449 − 0.125) the argument is 1.6449, and
  // Φ(1.6449) = 0.95; Φ(1) = 0.841345 (Abramowitz & Stegun, table 26.1).
  const room = (z: number) => 10 * Math.exp(0.5 * z - 0.125);
  expect(overrunChance(10, 100, room(1.644854), 0.5, 0)).toBeCloseTo(0.05, 6);
  expect(overrunChance(10, 100, room(1), 0.5, 0)).toBeCloseTo(1 - 0.8413447461, 8);
  expect(normalCdf(1.959964)).toBeCloseTo(0.975, 7);
  expect(normalQuantile(0.8)).toBeCloseTo(0.8416212336, 9);
});

test('the limit on Σm² is where the chance reaches what is allowed', () => {
  const z = normalQuantile(0.8);
  const limits = squareLimits(40, z, 0.3, 0.15);
  for (let total = 20; total <= 40; total++) {
    const limit = limits[total] ?? -1;
    if (limit < 0 || limit >= total * total) continue;
    expect(overrunChance(total, limit, 40, 0.3, 0.15)).toBeLessThanOrEqual(0.2 + 1e-9);
    expect(overrunChance(total, limit + 1, 40, 0.3, 0.15)).toBeGreaterThan(0.2);
  }
});

test('simulated lessons have this mean and variance, and run over about as often', () => {
  const random = createSeededRandom(1960);
  const factor = (sd: number) => Math.exp(sd * randomNormal(random) - (sd * sd) / 2);
  const runs = 400_000;
  for (const row of rows) {
    let sum = 0;
    let squares = 0;
    let over = 0;
    for (let run = 0; run < runs; run++) {
      const shared = factor(row.tau);
      const total = row.blocks.reduce((minutes, m) => minutes + m * shared * factor(row.sigma), 0);
      sum += total;
      squares += total * total;
      if (total > row.room) over++;
    }
    const mean = sum / runs;
    const variance = squares / runs - mean * mean;
    const label = JSON.stringify(row.blocks);
    // Four standard errors of the mean; 2 % of the variance, whose own standard error is below 0.5 %.
    expect(Math.abs(mean - sumOf(row.blocks, 1)), label).toBeLessThan(4 * Math.sqrt(row.variance / runs));
    expect(Math.abs(variance / row.variance - 1), label).toBeLessThan(0.02);
    // The sum is not quite lognormal: the approximation is good to about one in a hundred lessons.
    expect(Math.abs(over / runs - row.chance), label).toBeLessThan(0.01);
  }
});
