// Between a computed course and the planning problem's own form: the last plan goes in as the place to start from.

import type { Plan, PlanningProblem } from '../problem/problem.ts';
import { activityId } from './course-activity.ts';
import type { CoursePlan } from './course-plan.ts';
import type { Wish } from './repair-plan.ts';

/** The id of the revisit that completing an activity will bring. */
export const completionRevisit = (activity: string) => `rev:${activity}`;

/**
 * The part of an earlier plan that can still be meant: lessons that still stand, work and revisits that are still to be
 * done. It need not be feasible any more.
 */
export function coursePlanToPlan(previous: CoursePlan, problem: PlanningProblem): Plan {
  const lessonIndexById = new Map(problem.lessons.map((lesson, at) => [lesson.id, at]));
  const activities = new Map(problem.activities.map((a) => [a.id, a]));
  const reviews = new Set(problem.reviews.map((review) => review.id));
  const used = new Set<string>();
  const lessons = previous.lessons.flatMap((lesson) => {
    const at = lessonIndexById.get(lesson.lesson);
    if (at === undefined) return [];
    const minutesById = new Map<string, number>();
    const revisits: string[] = [];
    for (const segment of lesson.segments) {
      if (segment.pinned) continue;
      const id =
        segment.courseUnit !== null && segment.activity !== null
          ? activityId(segment.courseUnit, segment.activity)
          : null;
      if (segment.kind !== 'revisit') {
        if (id !== null && activities.has(id))
          minutesById.set(id, (minutesById.get(id) ?? 0) + segment.planned);
        continue;
      }
      // The forecast of a revisit becomes the real one once its skill is there.
      if (segment.skill === null || used.has(segment.skill) || !reviews.has(segment.skill)) continue;
      used.add(segment.skill);
      revisits.push(segment.skill);
    }
    const chunks = [...minutesById].map(([activity, minutes]) => ({ activity, minutes }));
    return [{ lesson: at, chunks, reviews: revisits }];
  });
  return { lessons: lessons.sort((a, b) => a.lesson - b.lesson), objective: previous.objective };
}

/**
 * What the last plan wishes for in the lessons there are now: work and revisits of a lesson that is no longer to come fall
 * to the first one after it. In the order of the last plan.
 */
export function coursePlanToWishes(previous: CoursePlan, problem: PlanningProblem): readonly Wish[] {
  const indexById = new Map(problem.lessons.map((lesson, at) => [lesson.id, at]));
  return previous.lessons.flatMap((lesson) => {
    const next = problem.lessons.findIndex((l) => l.date >= lesson.date);
    // Half a lesson earlier: late from the start, and before what stands there.
    const slot = indexById.get(lesson.lesson) ?? (next < 0 ? problem.lessons.length : next) - 0.5;
    return lesson.segments.flatMap((segment): Wish[] => {
      if (segment.pinned) return [];
      if (segment.kind === 'revisit')
        return segment.skill === null ? [] : [{ slot, id: segment.skill, minutes: 0 }];
      return segment.courseUnit === null || segment.activity === null
        ? []
        : [{ slot, id: activityId(segment.courseUnit, segment.activity), minutes: segment.planned }];
    });
  });
}

/** Minutes of work that the last plan had in each lesson; null for a lesson that it did not know. */
export function formerMinutes(previous: CoursePlan, problem: PlanningProblem): readonly (number | null)[] {
  const minutesById = new Map(
    previous.lessons.map(({ lesson, segments }) => [
      lesson,
      segments
        .filter((s) => (s.kind === 'work' || s.kind === 'extension') && !s.pinned)
        .reduce((sum, s) => sum + s.planned, 0),
    ]),
  );
  return problem.lessons.map((lesson) => minutesById.get(lesson.id) ?? null);
}
