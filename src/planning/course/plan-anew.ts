// A plan for a problem that has changed since the last plan: as good as a new one, or nearly, with as little moved as that
// allows. First the last plan mended; else its beginning kept and the rest planned anew; else all of it.

import { evaluatePlan } from '../problem/evaluate-plan.ts';
import type { Objective, Plan, PlannedLesson, PlanningProblem } from '../problem/problem.ts';
import { type SolveOptions, solve } from '../solve/solve.ts';
import { carriedOn, wishToCarryOn } from './carry-on.ts';
import type { CoursePlan } from './course-plan.ts';
import { joinLessons, restOfProblem } from './keep-beginning.ts';
import { coursePlanToPlan, coursePlanToWishes, formerMinutes } from './plan-answer.ts';
import { repairPlan } from './repair-plan.ts';
import { tightenWindows } from './tighten-windows.ts';

export interface PlanCourseOptions {
  /** Budget of the search; the solver's own by default. */
  readonly steps?: number;
}

/**
 * How much less good a plan that moves less may be than one made from nothing: a dozen minutes of the first strand left for
 * later, a few revisits a lesson late, some work a little later. Our own choice.
 */
const patience = { U: 60, P: 30, E: 1.08 };
/** Twice that for lessons that no change has touched: a teacher may have prepared them. */
const patienceForBeginning = { U: 120, P: 60, E: 1.16 };

/** A lesson that passes between two goes at an activity counts as so many minutes a lesson later. Our own choice. */
const gapWeight = 10;

/**
 * Answers the problem, near the previous plan where there is one. Work in `begun` (ids, in teaching order) has a go in the
 * first lesson wherever the rules of the problem allow it.
 */
export function planAnew(
  problem: PlanningProblem,
  previous: CoursePlan | null,
  begun: readonly string[],
  options: PlanCourseOptions,
): Plan {
  const best = solveFilled(
    problem,
    previous === null ? options : { ...options, previous: coursePlanToPlan(previous, problem) },
  );
  if (previous === null) return carryOn(problem, best, begun, options);
  const wishes = wishToCarryOn(problem, begun, coursePlanToWishes(previous, problem));
  const mended = repairPlan(problem, wishes, formerMinutes(previous, problem));
  const kept = asPlan(problem, mended);
  const carried = carriedOn(begun, mended);
  // Near the best there is, it is near the best that has all begun work in its place: no need to search for that.
  if (kept !== null && carried === begun.length && isNear(kept.objective, best.objective, patience))
    return kept;
  const fresh = carryOn(problem, best, begun, options);
  if (carried < carriedOn(begun, fresh.lessons)) return fresh;
  if (kept !== null && isNear(kept.objective, fresh.objective, patience)) return kept;

  const from = firstDifference(problem, previous, mended);
  if (from === 0) return fresh;
  const joined = planRest(problem, mended, from, options);
  return joined !== null && isNear(joined.objective, fresh.objective, patienceForBeginning) ? joined : fresh;
}

/** The plan with a go at all begun work in the first lesson, the other lessons planned again; or as it was. */
function carryOn(
  problem: PlanningProblem,
  plan: Plan,
  begun: readonly string[],
  options: PlanCourseOptions,
): Plan {
  if (carriedOn(begun, plan.lessons) === begun.length) return plan;
  const wishes = plan.lessons.flatMap(({ lesson: slot, chunks, reviews }) => [
    ...reviews.map((id) => ({ slot, id, minutes: 0 })),
    ...chunks.map(({ activity, minutes }) => ({ slot, id: activity, minutes })),
  ]);
  const mended = repairPlan(
    problem,
    wishToCarryOn(problem, begun, wishes),
    problem.lessons.map(() => 0),
  );
  if (carriedOn(begun, mended) <= carriedOn(begun, plan.lessons)) return plan;
  return planRest(problem, mended, 1, options) ?? plan;
}

/** The lessons before `from` as they are and the rest planned anew, or null when the whole breaks a rule. */
function planRest(
  problem: PlanningProblem,
  lessons: readonly PlannedLesson[],
  from: number,
  options: PlanCourseOptions,
): Plan | null {
  const rest = solveFilled(restOfProblem(problem, lessons, from), options);
  return asPlan(problem, joinLessons(lessons, rest.lessons, from));
}

function solveFilled(problem: PlanningProblem, options: SolveOptions): Plan {
  return solve(tightenWindows(problem), { ...options, gapWeight });
}

/** The lessons as a plan, or null when they break a rule of the problem. */
function asPlan(problem: PlanningProblem, lessons: readonly PlannedLesson[]): Plan | null {
  const { objective, feasible } = evaluatePlan(problem, { lessons });
  return feasible ? { lessons, objective } : null;
}

function isNear(one: Objective, best: Objective, most: typeof patience): boolean {
  // Where all of the work fits, all of it is done: "no room" would not be true.
  const undone = best.U > 0 ? most.U : 0;
  if (one.U > best.U + undone || one.P > best.P + most.P) return false;
  // Doing more of the work takes it further into the term, which is no fault.
  return one.U < best.U || one.E <= Math.max(best.E * most.E, best.E + 30);
}

/** The first lesson in which the mended plan has other work than the previous one. */
function firstDifference(
  problem: PlanningProblem,
  previous: CoursePlan,
  mended: readonly PlannedLesson[],
): number {
  const before = coursePlanToPlan(previous, problem).lessons;
  const written = (lesson: PlannedLesson | undefined) =>
    [...(lesson?.chunks ?? [])]
      .map((chunk) => `${chunk.activity} ${chunk.minutes}`)
      .sort()
      .join();
  const known = new Set(previous.lessons.map((lesson) => lesson.lesson));
  const at = mended.findIndex(
    (lesson) =>
      !known.has(problem.lessons[lesson.lesson]?.id ?? '') ||
      written(lesson) !== written(before.find((l) => l.lesson === lesson.lesson)),
  );
  return at < 0 ? mended.length : at;
}
