// Why: the planning problem counts a split as worse than any delay, so with lessons to spare it would rather leave a
// lesson half empty than split an activity over two. A teacher fills the lesson. So the work is first laid as early as
// it will go, and then planned well within the lessons that this took.

import type { PlanningProblem } from '../problem/problem.ts';
import { solve } from '../solve/solve.ts';

/** Enough for a plan that is good, not best: only the lesson in which it ends is used. */
const roughSteps = 200;

/**
 * The same problem with core work kept to the lessons that it needs when every lesson is filled; work that may only
 * start later keeps its own days.
 */
export function tightenWindows(problem: PlanningProblem): PlanningProblem {
  const core = new Set(problem.activities.filter((a) => a.kind === 'core' && a.first === 0).map((a) => a.id));
  if (core.size === 0) return problem;
  const earliest = solve(
    {
      ...problem,
      weights: { late: 0, solo: 0, split: 0 },
      activities: problem.activities.filter((a) => a.kind === 'core'),
      reviews: [],
    },
    { steps: roughSteps },
  );
  let end = -1;
  const minutesById = new Map<string, number>();
  for (const { lesson, chunks } of earliest.lessons)
    for (const { activity, minutes } of chunks) {
      if (!core.has(activity)) continue;
      end = Math.max(end, lesson);
      minutesById.set(activity, (minutesById.get(activity) ?? 0) + minutes);
    }
  // Where even this leaves work undone every lesson is needed anyway.
  const all = problem.activities.every((a) => !core.has(a.id) || minutesById.get(a.id) === a.demand);
  if (!all || end < 0) return problem;
  return {
    ...problem,
    activities: problem.activities.map((a) =>
      core.has(a.id) ? { ...a, last: Math.max(a.first, Math.min(a.last, end)) } : a,
    ),
  };
}
