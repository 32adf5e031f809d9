// Source: the MIP solver HiGHS 1.15.3 (npm `highs`), on the model of bench/planner/highs-model.ts; see README.md.
// data/highs-optima.json is recorded by bench/planner/record-baseline.ts and never edited.

import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Objective, solve } from '#planning';
import { generateProblem } from '../../bench/planner/generate.ts';
import { type BaselineRow, readBaseline } from '../../bench/planner/record-baseline.ts';
import { solveWithHighs } from '../../bench/planner/solve-with-highs.ts';
import { evaluate } from './data/check-plan.mjs';

const rows = readBaseline(fileURLToPath(new URL('./data/highs-optima.json', import.meta.url)));
const proven = rows.filter((row) => row.proven === 'UPE');

test('of the small problems HiGHS solves to the proven optimum, ours is optimal on at least 40 and on 97 in 100', () => {
  const missed: string[] = [];
  for (const row of proven) {
    const problem = generateProblem(row.size, row.seed);
    // more steps than a teacher waits for: this is about what the search can find at all
    const plan = solve(problem, { steps: 40_000 });
    expect(evaluate(problem, plan).broken, nameOf(row)).toEqual([]);
    if (firstDifference(plan.objective, row.objective) !== null) missed.push(nameOf(row));
    expect(plan.objective.U, nameOf(row)).toBeLessThanOrEqual(1.03 * (row.objective?.U ?? 0) + 1e-6);
  }
  expect(proven.length - missed.length, missed.join()).toBeGreaterThanOrEqual(40);
  expect(missed.length / proven.length, missed.join()).toBeLessThanOrEqual(0.03);
});

test('within the usual budget, at least nine in ten are optimal, and none claims to be better', () => {
  let optimal = 0;
  for (const row of proven) {
    const { objective } = solve(generateProblem(row.size, row.seed));
    const at = firstDifference(objective, row.objective);
    if (at === null) optimal++;
    else expect(objective[at], nameOf(row)).toBeGreaterThan(row.objective?.[at] ?? Number.POSITIVE_INFINITY);
  }
  expect(optimal / proven.length).toBeGreaterThanOrEqual(0.9);
});

test('HiGHS run now says what the file says, and the judge allows its plans', async () => {
  const quick = [...proven].sort((a, b) => a.seconds - b.seconds).slice(0, 8);
  for (const row of quick) {
    const problem = generateProblem(row.size, row.seed);
    const answer = await solveWithHighs(problem, 60);
    expect(answer.proven, nameOf(row)).toEqual(['U', 'P', 'E']);
    expectSame(answer.objective, row.objective, nameOf(row));
    expect(evaluate(problem, answer.plan).broken, nameOf(row)).toEqual([]);
  }
});

const nameOf = (row: BaselineRow): string => `${row.size} problem of seed ${row.seed}`;

function firstDifference(a: Objective, b: Objective | null): keyof Objective | null {
  for (const key of ['U', 'P', 'E'] as const)
    if (Math.abs(a[key] - (b?.[key] ?? Number.POSITIVE_INFINITY)) > 1e-6) return key;
  return null;
}

function expectSame(ours: Objective | null, theirs: Objective | null, name: string): void {
  for (const key of ['U', 'P', 'E'] as const)
    expect(ours?.[key], `${key} of ${name}`).toBeCloseTo(theirs?.[key] ?? Number.NaN, 5);
}
