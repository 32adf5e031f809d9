// Where a new course starts; a teacher can change each. Common practice, no source.

import type { PacePrior } from '../pace/student-pace.ts';
import type { CourseSettings } from './course-input.ts';

export const defaultCourseSettings: CourseSettings = {
  overrun: 0.2,
  retention: 0.85,
  maxRun: 3,
  parkGap: 2,
  settlingIn: 2,
  settingPractice: 3,
  recap: 3,
  revisit: 5,
  mostBlocks: 4,
  mostStrands: 3,
};

/** Before the studio has a log: pace as usual, students within about ±22 %, one lesson within about ±35 %. */
export const defaultPacePrior: PacePrior = { mean: 0, between: 0.2, within: 0.3 };
