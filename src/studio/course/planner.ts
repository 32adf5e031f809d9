// The part of planning that the studio leans on, as an argument, so that tests can plan with something small.

import type { CourseInput, CoursePlan, Move, MoveContext } from '#planning';

export interface Planner {
  /** Plans a course; among equal plans the one nearest to `previous`. */
  planCourse(input: CourseInput, previous: CoursePlan | null): CoursePlan;
  /** What moved from one plan to the next, and why. */
  listMoves(before: CoursePlan, after: CoursePlan, context: MoveContext): readonly Move[];
}
