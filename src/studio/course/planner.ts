// The part of planning that the studio leans on, as an argument, so that tests can plan with something small.

import type { CourseInput, CoursePlan, Move, MoveContext } from '#planning';

export type PlanEffort = 'full' | 'brisk';

export interface Planner {
  /**
   * Plans a course; among equal plans the one nearest to `previous`. `brisk` searches less, for when a whole studio waits:
   * it starts from the plan there is, and the next change of each course searches in full.
   */
  planCourse(input: CourseInput, previous: CoursePlan | null, effort: PlanEffort): CoursePlan;
  /** What moved from one plan to the next, and why. */
  listMoves(before: CoursePlan, after: CoursePlan, context: MoveContext): readonly Move[];
}
