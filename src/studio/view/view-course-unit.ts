// A student's copy of a unit beside the library's, with what differs in sentences.

import type { CourseUnitCompareView } from '#contract';
import { compareUnits, formatUnitDifference } from '#planning';
import { loadLearner } from '../course/course-records.ts';
import type { CourseUnitId } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** The comparison, from the library's copy to the student's; null when there is no such unit on a course. */
export async function viewCourseUnit(
  reader: Reader,
  id: CourseUnitId,
): Promise<CourseUnitCompareView | null> {
  const courseUnit = await reader.get('courseUnit', id);
  const course = courseUnit === null ? null : await reader.get('course', courseUnit.course);
  if (courseUnit === null || course === null) return null;
  const library = (await reader.get('unit', courseUnit.unit))?.document ?? null;
  return {
    id,
    course: course.id,
    courseRevision: course.revision,
    learner: (await loadLearner(reader, course)).name,
    document: courseUnit.document,
    library,
    differences: library === null ? [] : compareUnits(library, courseUnit.document).map(formatUnitDifference),
  };
}
