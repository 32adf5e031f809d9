// Who was not there in a lesson of a group. Nothing is recorded for them in it; the group's course goes on.

import type { MemberView } from '#contract';
import type { Learner } from '../course/course-records.ts';
import type { LessonRecord, StudentId, StudentRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** Who was not there in any of these lessons, by id, also those who are in the group no more. */
export async function loadAbsent(
  reader: Reader,
  learner: Learner,
  lessons: readonly Pick<LessonRecord, 'absent'>[],
): Promise<ReadonlyMap<StudentId, StudentRecord>> {
  const byId = new Map(learner.students.map((student) => [student.id, student]));
  const ids = new Set(lessons.flatMap((lesson) => lesson.absent ?? []));
  const found = new Map<StudentId, StudentRecord>();
  for (const id of ids) {
    const student = byId.get(id) ?? (await reader.get('student', id));
    if (student !== null && student !== undefined) found.set(id, student);
  }
  return found;
}

/** Those who were not there in one lesson, with their names. */
export function listAbsent(
  { absent }: Pick<LessonRecord, 'absent'>,
  studentById: ReadonlyMap<StudentId, StudentRecord>,
): readonly MemberView[] {
  return (absent ?? []).flatMap((id) => {
    const student = studentById.get(id);
    return student === undefined ? [] : [{ student: id, name: student.name }];
  });
}
