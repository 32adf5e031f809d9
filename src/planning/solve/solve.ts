// The planner: a planning problem in, a plan out, the same every time.

import { createSeededRandom } from '#core';
import { evaluatePlan } from '../problem/evaluate-plan.ts';
import type { Plan, PlannedLesson, PlanningProblem } from '../problem/problem.ts';
import { createModel, type Model } from './model.ts';
import { type SearchResult, search } from './search.ts';
import { never } from './state.ts';

export interface SolveOptions {
  /** Budget of the search, in thousands of elementary operations; by default by the size of the problem. */
  readonly steps?: number;
  /** The plan before this one: among plans that are equally good, the one that moves least from it is wanted. */
  readonly previous?: Plan | null;
}

export interface SolveStats {
  readonly steps: number;
  /** Times that work was taken out and put back. */
  readonly rounds: number;
}

export interface SolvedPlan extends Plan {
  readonly stats: SolveStats;
}

export function solve(problem: PlanningProblem, options: SolveOptions = {}): SolvedPlan {
  const model = createModel(problem);
  const steps = options.steps ?? defaultSteps(model);
  const found = search(model, createSeededRandom(1), steps, null);
  const lessons = toLessons(problem, found);
  const { objective } = evaluatePlan(problem, { lessons });
  return { lessons, objective, stats: { steps, rounds: found.rounds } };
}

/** Enough for the bar of the planning design, in proportion to activities × lessons. */
function defaultSteps(model: Model): number {
  return 4000 + 40 * model.activityCount * model.lessonCount;
}

function toLessons(problem: PlanningProblem, found: SearchResult): readonly PlannedLesson[] {
  const reviewIds = [
    ...problem.reviews.map(({ id }) => id),
    ...problem.activities.flatMap(({ id, review }) => (review > 0 ? [`rev:${id}`] : [])),
  ];
  return problem.lessons.map((_, l) => ({
    lesson: l,
    chunks: problem.activities.flatMap(({ id }, i) => {
      const minutes = found.minutes[i * problem.lessons.length + l] ?? 0;
      return minutes > 0 ? [{ activity: id, minutes }] : [];
    }),
    reviews: reviewIds.filter((_id, r) => (found.reviewAt[r] ?? never) === l),
  }));
}
