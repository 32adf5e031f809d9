// One student: who they are, and which courses they take part in.

import type { StudentView } from '#contract';
import { findInstrument } from '#music';
import { ageOfStudent } from '../course/course-records.ts';
import type { CourseRecord, StudentId, StudentRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import type { ViewOutside } from './view-studio.ts';

/** The view of a student, or null when there is none of this id. */
export async function viewStudent(
  reader: Reader,
  id: StudentId,
  { clock }: ViewOutside,
): Promise<StudentView | null> {
  const student = await reader.get('student', id);
  if (student === null) return null;
  const groups = (await reader.list('group')).filter((g) => g.members.includes(id));
  const own = await reader.list('course', { where: { student: id } });
  const shared: { readonly course: CourseRecord; readonly group: string }[] = [];
  for (const group of groups)
    for (const course of await reader.list('course', { where: { group: group.id } }))
      shared.push({ course, group: group.name });
  const courses = [...own.map((course) => ({ course, group: null })), ...shared];
  return {
    id,
    revision: student.revision,
    name: student.name,
    born: student.born,
    birthYear: student.birthYear,
    age: ageOfStudent(student, clock.today()),
    instruments: student.instruments,
    family: await viewFamily(reader, student),
    contacts: student.contacts,
    note: student.note,
    since: student.since,
    left: student.left,
    courses: courses.map(({ course, group }) => ({
      id: course.id,
      instrumentName: findInstrument(course.instrument)?.name ?? course.instrument,
      group,
    })),
  };
}

async function viewFamily(
  reader: Reader,
  { id: own, family: id }: Pick<StudentRecord, 'id' | 'family'>,
): Promise<StudentView['family']> {
  const family = id === null ? null : await reader.get('family', id);
  if (family === null) return null;
  const members = await reader.list('student', { where: { family: family.id }, orderBy: ['name'] });
  return {
    id: family.id,
    revision: family.revision,
    contacts: family.contacts,
    siblings: members.flatMap(({ id: member, name, left }) =>
      member === own ? [] : [{ id: member, name, left }],
    ),
  };
}
