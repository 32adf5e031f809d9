// The real planner, as the rules take it.

import { listMoves, planCourse } from '#planning';
import type { Planner } from './planner.ts';

export const coursePlanner: Planner = {
  planCourse: (input, previous) => planCourse(input, previous),
  listMoves,
};
