// The real planner, as the rules take it.

import { listMoves, planCourse } from '#planning';
import type { Planner } from './planner.ts';

/** Steps of the solver for a brisk plan: about a quarter of what one student's twelve lessons get otherwise. */
const briskSteps = 2000;

export const coursePlanner: Planner = {
  planCourse: (input, previous, effort) =>
    planCourse(input, previous, effort === 'brisk' ? { steps: briskSteps } : {}),
  listMoves,
};
