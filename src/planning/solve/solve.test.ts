import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type PlainDate } from '#core';
import { fuzzProblems } from '../../../bench/planner/fuzz-problems.ts';
import { generateProblem, problemSizes } from '../../../bench/planner/generate.ts';
import { evaluatePlan } from '../problem/evaluate-plan.ts';
import type { Plan, PlanningProblem } from '../problem/problem.ts';
import { solve } from './solve.ts';

const anyProblem = fc
  .tuple(fc.constantFrom(...problemSizes), fc.integer({ min: 1, max: 1_000_000 }))
  .map(([size, seed]) => generateProblem(size, seed));
const runs = { numRuns: 60, seed: 20261125 };

test('every plan is allowed, and its objective is what the evaluation says', () => {
  fc.assert(
    fc.property(anyProblem, fc.integer({ min: 0, max: 500 }), (problem, steps) => {
      const plan = solve(problem, { steps });
      const { broken, objective } = evaluatePlan(problem, plan);
      expect(broken).toEqual([]);
      expect(plan.objective).toEqual(objective);
    }),
    runs,
  );
});

test('a course of years has an allowed plan too, with work in its last lessons', () => {
  const { lessons, activities, ...rest } = generateProblem('large', 12);
  const long = Array.from({ length: 10 }, () => lessons)
    .flat()
    .map((lesson, l) => ({ ...lesson, id: `L${l}`, date: addDays('2026-09-07' as PlainDate, 7 * l) }));
  const spread = activities.map((activity, i) => ({
    ...activity,
    preds: [],
    first: (5 * i) % 130,
    last: ((5 * i) % 130) + 9,
  }));
  const problem = { ...rest, lessons: long, activities: spread };
  for (const previous of [null, solve(problem, { steps: 500 })]) {
    const plan = solve(problem, { steps: 2000, previous });
    expect(evaluatePlan(problem, plan).broken).toEqual([]);
    for (const from of [0, 60, 64, 120]) {
      const chunks = plan.lessons.slice(from, from + 20).flatMap((lesson) => lesson.chunks);
      expect(chunks.length).toBeGreaterThan(0);
    }
  }
});

test('the same question has the same answer', () => {
  fc.assert(
    fc.property(anyProblem, (problem) => {
      expect(solve(problem, { steps: 200 })).toEqual(solve(structuredClone(problem), { steps: 200 }));
    }),
    { ...runs, numRuns: 20 },
  );
});

test('it leaves no more undone than putting each activity in as early as it goes', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('small' as const, 'medium' as const),
      fc.integer({ min: 1, max: 1_000_000 }),
      (size, seed) => {
        const problem = generateProblem(size, seed);
        const { U } = evaluatePlan(problem, plainPlan(problem)).objective;
        expect(solve(problem, { steps: 1500 }).objective.U).toBeLessThanOrEqual(U + 1e-9);
      },
    ),
    { ...runs, numRuns: 25 },
  );
});

test('where only a few minutes have no place it searches on, for a plan that holds all', () => {
  const problem = generateProblem('medium', 60580);
  const short = solve(problem, { steps: 40_500 });
  expect(short.objective.U).toBeGreaterThan(0);
  const long = solve(problem);
  expect(long.objective.U).toBe(0);
  expect(long.stats.steps).toBeGreaterThan(5 * short.stats.steps);
});

test.each([
  ['much', 'medium', 30287],
  ['nothing', 'medium', 30056],
  ['a few minutes of a small problem', 'small', 50231],
] as const)('where %s has no place it does not', (_what, size, seed) => {
  expect(solve(generateProblem(size, seed)).stats.steps).toBeLessThan(50_000);
});

test('a plan that cannot be bettered is kept as it is', () => {
  fc.assert(
    fc.property(anyProblem, (problem) => {
      const first = solve(problem, { steps: 1000 });
      const again = solve(problem, { steps: 1000, previous: first });
      const better = (['U', 'P', 'E'] as const).some((k) => again.objective[k] < first.objective[k] - 1e-9);
      if (!better) expect(again.lessons).toEqual(first.lessons);
      const worse = (['U', 'P', 'E'] as const).find(
        (k) => Math.abs(again.objective[k] - first.objective[k]) > 1e-9,
      );
      if (worse !== undefined) expect(again.objective[worse]).toBeLessThan(first.objective[worse]);
    }),
    { ...runs, numRuns: 30 },
  );
});

test('[F22] where gaps count beside E, goes at one activity stand closer together, and every plan is allowed', () => {
  let loose = 0;
  let close = 0;
  for (let seed = 1; seed <= 12; seed++) {
    const problem = withFreeSplits(generateProblem('medium', seed));
    const plan = solve(problem, { steps: 4000, gapWeight: 10 });
    expect(evaluatePlan(problem, plan).broken).toEqual([]);
    loose += gapsIn(solve(problem, { steps: 4000 }));
    close += gapsIn(plan);
  }
  expect(close).toBeLessThan(0.6 * loose);
});

test('a last plan of other lessons and strangers is only a hint', () => {
  fc.assert(
    fc.property(anyProblem, anyProblem, (problem, other) => {
      const plan = solve(problem, { steps: 100, previous: solve(other, { steps: 20 }) });
      expect(evaluatePlan(problem, plan).broken).toEqual([]);
    }),
    { ...runs, numRuns: 40 },
  );
});

test('nothing to plan, and nowhere to plan it', () => {
  const problem = generateProblem('small', 1);
  expect(solve({ ...problem, activities: [] }).objective.U).toBe(0);
  expect(solve({ ...problem, lessons: [] })).toMatchObject({
    lessons: [],
    objective: { P: expect.any(Number), E: 0 },
  });
  expect(solve({ ...problem, lessons: [], activities: [], strands: [], reviews: [] }).objective).toEqual({
    U: 0,
    P: 0,
    E: 0,
  });
});

test('revisits are placed when there is nothing else', () => {
  const problem: PlanningProblem = {
    ...generateProblem('small', 1),
    weights: { late: 1, solo: 0, split: 0 },
    activities: [],
    reviews: [{ id: 'R', minutes: 1, due: 1, weight: 1 }],
  };
  expect(solve(problem).lessons[1]?.reviews).toEqual(['R']);
});

test('damaged problem files: 3,000 mutations, seed 7, no throw and no plan that is not allowed', () => {
  const { accepted, refused, failures } = fuzzProblems(3000, 7);
  expect(failures).toEqual([]);
  expect(accepted).toBeGreaterThan(300);
  expect(refused).toBeGreaterThan(300);
});

/** Splits, single strands and late revisits cost nothing, so that E alone decides where the goes stand. */
function withFreeSplits(problem: PlanningProblem): PlanningProblem {
  return { ...problem, weights: { late: 0, solo: 0, split: 0 } };
}

/** Lessons that pass between two goes at one activity. */
function gapsIn({ lessons }: Pick<Plan, 'lessons'>): number {
  const lessonsById = new Map<string, number[]>();
  for (const { lesson, chunks } of lessons)
    for (const { activity } of chunks)
      lessonsById.set(activity, [...(lessonsById.get(activity) ?? []), lesson]);
  return [...lessonsById.values()].reduce(
    (sum, at) => sum + Math.max(...at) - Math.min(...at) + 1 - at.length,
    0,
  );
}

/** The plan of someone in a hurry: each activity whole or in largest chunks, as early as it is allowed. */
function plainPlan(problem: PlanningProblem): Pick<Plan, 'lessons'> {
  const lessons = problem.lessons.map((_, lesson) => ({
    lesson,
    chunks: [] as { activity: string; minutes: number }[],
    reviews: [] as string[],
  }));
  for (const { id, demand, minChunk, maxChunk } of problem.activities) {
    let left = demand;
    for (const { chunks } of lessons) {
      const before = evaluatePlan(problem, { lessons }).broken.length;
      for (let minutes = Math.min(left, maxChunk); minutes >= Math.max(1, minChunk); minutes--) {
        chunks.push({ activity: id, minutes });
        if (evaluatePlan(problem, { lessons }).broken.length <= before) {
          left -= minutes;
          break;
        }
        chunks.pop();
      }
    }
  }
  return { lessons };
}
