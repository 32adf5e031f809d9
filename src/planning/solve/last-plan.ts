// The plan before this one, read by id.

import type { Plan, PlanningProblem } from '../problem/problem.ts';

/** Stands for "not placed", here and in the kernel. */
export const never = 1 << 20;

/** The plan before this one: minutes by cell and lesson by revisit. */
export interface LastPlan {
  readonly minutes: Int32Array;
  readonly reviewAt: Int32Array;
}

/** A plan as arrays; lessons, activities and revisits that the problem does not know are left out. */
export function readLastPlan(
  problem: PlanningProblem,
  reviewIds: readonly string[],
  plan: Pick<Plan, 'lessons'>,
): LastPlan {
  const T = problem.lessons.length;
  const indexById = new Map(problem.activities.map(({ id }, i) => [id, i]));
  const reviewById = new Map(reviewIds.map((id, r) => [id, r]));
  const minutes = new Int32Array(problem.activities.length * T);
  const reviewAt = new Int32Array(reviewIds.length).fill(never);
  for (const { lesson, chunks, reviews } of plan.lessons) {
    if (!(lesson >= 0 && lesson < T)) continue;
    for (const chunk of chunks) {
      const i = indexById.get(chunk.activity);
      if (i !== undefined) minutes[i * T + lesson] = chunk.minutes;
    }
    for (const id of reviews) {
      const r = reviewById.get(id);
      if (r !== undefined) reviewAt[r] = lesson;
    }
  }
  return { minutes, reviewAt };
}
