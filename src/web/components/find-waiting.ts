// Who waits for a first lesson: students without a course, and courses without a unit or without any lesson.

import type { CourseRow, StudentRow, StudentsView } from '#contract';

export interface Waiting {
  /** The student's id, or the course's: names the row. */
  readonly key: string;
  readonly name: string;
  /** In years; null of a group, and where it is unknown. */
  readonly age: number | null;
  /** Null of a group. */
  readonly student: StudentRow | null;
  /** Null while there is none. */
  readonly course: CourseRow | null;
  readonly wantsTime: boolean;
  readonly wantsUnit: boolean;
}

/** In the order of the list of students, groups after them. A student who leaves waits for nothing. */
export function findWaiting({ students, courses }: StudentsView): readonly Waiting[] {
  const waiting: Waiting[] = [];
  const wants = (course: CourseRow) => ({
    wantsTime: !course.weekly && course.sheets.length === 0,
    wantsUnit: course.units === 0,
  });
  for (const student of students) {
    if (!student.here || student.left !== null) continue;
    const { id, name, age } = student;
    if (student.courses.length === 0)
      waiting.push({ key: id, name, age, student, course: null, wantsTime: true, wantsUnit: true });
    for (const course of courses)
      if (course.student === id)
        waiting.push({ key: course.id, name, age, student, course, ...wants(course) });
  }
  for (const course of courses)
    if (course.student === null)
      waiting.push({
        key: course.id,
        name: course.learner,
        age: null,
        student: null,
        course,
        ...wants(course),
      });
  return waiting.filter((one) => one.wantsTime || one.wantsUnit);
}

/** Whether a teacher is to be asked of it unasked: a course with a unit and no weekly time may be one by arrangement. */
export const isPressing = ({ course, wantsUnit }: Waiting): boolean => course === null || wantsUnit;
