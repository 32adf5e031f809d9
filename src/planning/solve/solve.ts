// The planner: a planning problem in, a plan out, the same every time.

import { evaluatePlan } from '../problem/evaluate-plan.ts';
import type { Plan, PlannedLesson, PlanningProblem } from '../problem/problem.ts';
import { never, readLastPlan } from './last-plan.ts';
import { createModel, type Model } from './model.ts';
import { packModel } from './pack-model.ts';
import { type KernelPlan, runKernel } from './run-kernel.ts';
import { betterOf, searchPlan } from './search-partner.ts';

export interface SolveOptions {
  /** Budget of one search, in steps of about a microsecond; by default by the size of the problem, twice with a partner. */
  readonly steps?: number;
  /** The plan before this one: among plans that are equally good, the one that moves least from it is wanted. */
  readonly previous?: Plan | null;
  /**
   * What each lesson that passes between two goes at an activity counts for beside E, in minutes a lesson later: 0 by
   * default, as the planning problem has it. U and P come first all the same.
   */
  readonly gapWeight?: number;
}

export interface SolveStats {
  readonly steps: number;
  /** Times that work was taken out and put back. */
  readonly rounds: number;
}

export interface SolvedPlan extends Plan {
  readonly stats: SolveStats;
}

/**
 * Plans a problem that `parseProblem` has accepted. Always an allowed plan; U, P and E as small as the search finds, in
 * this order. Deterministic: the same problem, steps and previous plan give the same plan on every machine, with a search
 * partner (`searchWith`) one that is as good or better.
 */
export function solve(problem: PlanningProblem, options: SolveOptions = {}): SolvedPlan {
  const model = createModel(problem);
  const steps = options.steps ?? Math.round(defaultSteps(model) * (options.previous ? replanShare : 1));
  const reviewIds = [
    ...problem.reviews.map(({ id }) => id),
    ...problem.activities.flatMap(({ id, review }) => (review > 0 ? [`rev:${id}`] : [])),
  ];
  const last = options.previous ? readLastPlan(problem, reviewIds, options.previous) : null;
  const packed = packModel(model, last, options.gapWeight ?? 0);
  const cells = model.activityCount * model.lessonCount;
  const order = { cells, reviews: model.reviewCount, steps, seed: 1 };
  const isWhole = options.steps === undefined;
  const first = isWhole ? searchPlan(packed, order) : runKernel(packed, order);
  const goesOn = isWhole && isNearlyAll(model, first);
  const found = goesOn
    ? betterOf(first, searchPlan(packed, { ...order, steps: stepsForTheRest, seed: 3 }))
    : first;
  const lessons = toLessons(problem, reviewIds, found);
  const { objective } = evaluatePlan(problem, { lessons });
  return {
    lessons,
    objective,
    stats: { steps: goesOn ? steps + stepsForTheRest : steps, rounds: found.rounds },
  };
}

/** Minutes of the least weight that are few enough to search on for. */
const fewMinutes = 5;
/** A third of a second, for about one in sixty problems of 8 to 12 lessons. */
const stepsForTheRest = 324_000;

/**
 * Whether all work has its place but for a few minutes. Then one plan may hold it all, whose lessons are full to the minute:
 * rare, hard to find, and worth more to a teacher than the wait.
 */
function isNearlyAll(model: Model, { score }: KernelPlan): boolean {
  const undone = score[0] ?? 0;
  const least = model.weight.reduce((low, one) => (one > 0 ? Math.min(low, one) : low), Infinity);
  return undone > 0 && undone <= fewMinutes * least && !isSmall(model);
}

/** A replan starts from a plan that was good a week ago, and a whole studio is replanned at once. */
const replanShare = 0.6;

/** A step is about a microsecond: some 40 ms up to 12 lessons and 200 ms beyond, inside the design's bar. */
function defaultSteps(model: Model): number {
  if (isSmall(model)) return 34_000;
  return model.lessonCount <= 12 ? 40_500 : 200_000;
}

/** Activities × lessons so few that a search tries several times; times differ more from one such problem to the next. */
const isSmall = ({ activityCount, lessonCount }: Model): boolean => activityCount * lessonCount <= 80;

function toLessons(
  problem: PlanningProblem,
  reviewIds: readonly string[],
  found: KernelPlan,
): readonly PlannedLesson[] {
  return problem.lessons.map((_, l) => ({
    lesson: l,
    chunks: problem.activities.flatMap(({ id }, i) => {
      const minutes = found.minutes[i * problem.lessons.length + l] ?? 0;
      return minutes > 0 ? [{ activity: id, minutes }] : [];
    }),
    reviews: reviewIds.filter((_id, r) => (found.reviewAt[r] ?? never) === l),
  }));
}
