// Who learns, as every screen shows it.

import type { LearnerView, StrandView } from '#contract';
import type { PlainDate } from '#core';
import { findInstrument } from '#music';
import { ageOfLearner, type Learner, studentsOn } from '../course/course-records.ts';
import type { CourseRecord } from '../record/records.ts';

/** The learner of a course on a day. */
export function toLearnerView(course: CourseRecord, learner: Learner, day: PlainDate): LearnerView {
  return {
    student: course.student,
    group: course.group,
    name: learner.name,
    age: ageOfLearner(learner.students, day),
    instrument: course.instrument,
    instrumentName: findInstrument(course.instrument)?.name ?? course.instrument,
    stage: course.stage,
    members:
      learner.group === null
        ? []
        : studentsOn(learner.students, day).map((s) => ({ student: s.id, name: s.name })),
  };
}

/** Strands in their order of importance. */
export const toStrandViews = (course: CourseRecord): readonly StrandView[] =>
  [...course.strands].sort((a, b) => a.priority - b.priority);
