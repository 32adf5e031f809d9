// The activities of a course by unit and key, as this student meets them.

import type { PlainDate } from '#core';
import { type Activity, applyVariant, type Check, type SkillId } from '#planning';
import { ageOfLearner, type Learner } from '../course/course-records.ts';
import type { WorkOf } from '../lesson/work-segment.ts';
import type { CourseRecord, CourseUnitRecord, SegmentRecord } from '../record/records.ts';

export interface ActivityOnCourse {
  readonly unit: CourseUnitRecord;
  readonly activity: Activity;
  readonly isExtension: boolean;
}

export interface CourseActivities {
  readonly all: readonly ActivityOnCourse[];
  find(work: Pick<WorkOf, 'courseUnit' | 'activity'> | null): ActivityOnCourse | null;
  /** The activity a segment names, be it work or a revisit. */
  ofSegment(segment: SegmentRecord): ActivityOnCourse | null;
  /** Checks of a skill in the course's units. */
  checksOf(skill: SkillId): readonly Check[];
}

/** Lays the variants for stage and age over all activities of a course's units. */
export function listCourseActivities(
  course: CourseRecord,
  learner: Learner,
  units: readonly CourseUnitRecord[],
  day: PlainDate,
): CourseActivities {
  const student = { stage: course.stage, age: ageOfLearner(learner.students, day) };
  const all = units.flatMap((unit) => [
    ...unit.document.activities.map((a) => ({
      unit,
      activity: applyVariant(a, student),
      isExtension: false,
    })),
    ...unit.document.extensions.map((a) => ({ unit, activity: applyVariant(a, student), isExtension: true })),
  ]);
  const byKey = new Map(all.map((a) => [`${a.unit.id} ${a.activity.key}`, a]));
  const find = (work: Pick<WorkOf, 'courseUnit' | 'activity'> | null) =>
    work === null ? null : (byKey.get(`${work.courseUnit} ${work.activity}`) ?? null);
  return {
    all,
    find,
    ofSegment: ({ courseUnit, activity }) =>
      courseUnit === null || activity === null ? null : find({ courseUnit, activity }),
    checksOf: (skill) => units.flatMap((u) => u.document.checks.filter((c) => c.skill === skill)),
  };
}
