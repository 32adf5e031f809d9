// What was begun in the last lesson and not finished goes on in the next one: a teacher says "we will finish this next
// time" and means it. The objective alone would not see to it: a few minutes more or less early cost it nearly nothing.

import { squareLimits } from '../problem/overrun.ts';
import type { PlanningProblem, ProblemActivity } from '../problem/problem.ts';
import { activityId } from './course-activity.ts';
import type { CourseInput } from './course-input.ts';
import type { CoursePlan } from './course-plan.ts';
import { coursePlanToPlan } from './plan-answer.ts';

/**
 * Work of the last lesson that was not finished, in the order it was taught. Where the last plan has all that is left
 * of it standing later, it went as planned and stays there.
 */
export function workToCarryOn(
  input: CourseInput,
  problem: PlanningProblem,
  previous: CoursePlan | null,
): readonly string[] {
  const begun = (input.taught.at(-1)?.work ?? [])
    .filter((work) => work.outcome === 'partly')
    .map((work) => activityId(work.courseUnit, work.activity));
  if (previous === null || begun.length === 0) return begun;
  const { lessons } = coursePlanToPlan(previous, problem);
  return begun.filter((id) => {
    const goes = lessons.flatMap(({ lesson, chunks }) =>
      chunks.flatMap((chunk) => (chunk.activity === id ? [{ lesson, minutes: chunk.minutes }] : [])),
    );
    const coming = goes.reduce((sum, go) => sum + go.minutes, 0);
    const demand = problem.activities.find((a) => a.id === id)?.demand ?? 0;
    return demand > coming || goes.every((go) => go.lesson === 0);
  });
}

/**
 * The problem with begun work (ids in `begun`, in teaching order) bound to its first lesson, as much of it as one go each
 * and that lesson can hold. What has to wait for something else, for its day or for the end of a rest stays as it was.
 */
export function carryOn(problem: PlanningProblem, begun: readonly string[]): PlanningProblem {
  const [next] = problem.lessons;
  if (next === undefined || begun.length === 0) return problem;
  const room = next.length - next.fixed;
  const limits = squareLimits(room, problem.z, problem.sigma, problem.tau);
  const bound = new Set<string>();
  const strands = new Set<string>();
  let total = next.recap;
  let squares = next.recap ** 2;
  for (const id of begun) {
    const a = problem.activities.find((one) => one.id === id);
    if (a === undefined || a.kind === 'ext' || a.first > 0 || a.demand > a.maxChunk || a.preds.length > 0)
      continue;
    if (bound.size >= next.maxBlocks || new Set([...strands, a.strand]).size > next.maxStrands) continue;
    if (isResting(problem, a) || squares + a.demand ** 2 > (limits[total + a.demand] ?? -1)) continue;
    bound.add(id);
    strands.add(a.strand);
    total += a.demand;
    squares += a.demand ** 2;
  }
  return {
    ...problem,
    activities: problem.activities.map((a) => (bound.has(a.id) ? { ...a, last: 0 } : a)),
  };
}

/** After a full run of lessons an activity rests: may it not stand in the first lesson of the problem? */
function isResting({ maxRun, parkGap }: PlanningProblem, { recent = [] }: ProblemActivity): boolean {
  for (let gap = 0; gap < parkGap; gap++)
    if (recent.length >= gap + maxRun && recent.slice(gap, gap + maxRun).every((was) => was === 1))
      return true;
  return false;
}
