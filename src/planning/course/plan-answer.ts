// Between a computed course and the planning problem's own form: the last plan goes in as the place to start from.

import type { Plan, PlanningProblem } from '../problem/problem.ts';
import { activityId } from './course-activity.ts';
import type { CoursePlan } from './course-plan.ts';

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
