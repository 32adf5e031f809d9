// What was begun in the last lesson and not finished goes on in the next one: a teacher says "we will finish this next
// time" and means it. The objective alone would not see to it: a few minutes more or less early cost it nearly nothing.

import type { PlannedLesson, PlanningProblem } from '../problem/problem.ts';
import { activityId } from './course-activity.ts';
import type { CourseInput } from './course-input.ts';
import type { CoursePlan } from './course-plan.ts';
import { coursePlanToPlan } from './plan-answer.ts';
import type { Wish } from './repair-plan.ts';

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

/** The wishes of a plan with those for begun work before all others, as early as they can come true. */
export const wishToCarryOn = (
  problem: PlanningProblem,
  begun: readonly string[],
  wishes: readonly Wish[],
): readonly Wish[] => [
  ...begun.flatMap((id) => {
    const minutes = problem.activities.find((a) => a.id === id)?.demand ?? 0;
    return minutes > 0 ? [{ slot: -1, id, minutes }] : [];
  }),
  ...wishes,
];

/** How much of the begun work has a go in the first lesson. */
export const carriedOn = (begun: readonly string[], lessons: readonly PlannedLesson[]): number => {
  const first = lessons.find((lesson) => lesson.lesson === 0)?.chunks ?? [];
  return begun.filter((id) => first.some((chunk) => chunk.activity === id)).length;
};
