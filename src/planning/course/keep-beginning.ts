// The rest of a problem once its first lessons are settled: what stands in them is taken as done, and only the lessons
// after them are planned anew.

import type { PlannedLesson, PlanningProblem } from '../problem/problem.ts';

/** The problem of the lessons from `from` on, after `kept` lessons before it. */
export function restOfProblem(
  problem: PlanningProblem,
  kept: readonly PlannedLesson[],
  from: number,
): PlanningProblem {
  const minutesIn = (id: string, lesson: PlannedLesson) =>
    lesson.chunks.find((chunk) => chunk.activity === id)?.minutes ?? 0;
  const beginning = kept.slice(0, from);
  const revisited = new Set(beginning.flatMap((lesson) => lesson.reviews));
  const horizon = problem.maxRun + problem.parkGap - 1;
  const activities = problem.activities.flatMap((a) => {
    const demand = a.demand - beginning.reduce((sum, lesson) => sum + minutesIn(a.id, lesson), 0);
    if (demand <= 0 || a.last < from) return [];
    const recent = [
      ...[...beginning].reverse().map((lesson): 0 | 1 => (minutesIn(a.id, lesson) > 0 ? 1 : 0)),
      ...(a.recent ?? []),
    ].slice(0, horizon);
    return [{ ...a, demand, first: Math.max(0, a.first - from), last: a.last - from, recent }];
  });
  const open = new Set(activities.map((a) => a.id));
  const done = new Set(
    problem.activities
      .filter((a) => beginning.reduce((sum, lesson) => sum + minutesIn(a.id, lesson), 0) >= a.demand)
      .map((a) => a.id),
  );
  return {
    ...problem,
    lessons: problem.lessons.slice(from),
    activities: activities
      // What rests on work whose days are over can never start.
      .filter((a) => a.preds.every((id) => open.has(id) || done.has(id)))
      .map((a) => ({
        ...a,
        minChunk: Math.min(a.minChunk, a.demand),
        maxChunk: Math.min(a.maxChunk, a.demand),
        preds: a.preds.filter((id) => open.has(id)),
      })),
    strands: problem.strands.map((strand) => ({
      ...strand,
      deadline: strand.deadline === null ? null : Math.max(0, strand.deadline - from),
    })),
    reviews: problem.reviews
      .filter((review) => !revisited.has(review.id))
      .map((review) => ({ ...review, due: Math.max(0, review.due - from) })),
  };
}

/** Kept lessons and the answer for the rest as one list. */
export function joinLessons(
  kept: readonly PlannedLesson[],
  rest: readonly PlannedLesson[],
  from: number,
): readonly PlannedLesson[] {
  return [...kept.slice(0, from), ...rest.map((lesson) => ({ ...lesson, lesson: lesson.lesson + from }))];
}
