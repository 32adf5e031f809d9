// A student is erased for good: their rows, their traces in what others keep, and in the journal. Nothing brings them back.

import { err, ok } from '#core';
import { coursesOfGroups } from '../erase/find-traces.ts';
import { applyErasure, type Erasure, planErasure } from '../erase/plan-erasure.ts';
import type { CourseId } from '../record/records.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { settleFamily } from './family-commands.ts';
import { changedElsewhere, invalid, notAllowed } from './fault.ts';
import { remakeLessons } from './remake-lessons.ts';

const eraseLabel = 'Erased a student for good';

export const eraseStudent: Handler<'student.erase'> = async (
  desk,
  { seen, student: id, name, called, keep },
) => {
  const { tx } = desk;
  const student = await tx.get('student', id);
  if (student === null)
    return err({
      kind: 'NotFound',
      message: 'There is no such student any more. They may have been removed, or erased for good.',
    });
  if (desk.imagining) return notAllowed('Erasing a student is not something to be tried out.');
  if (student.revision !== seen) return changedElsewhere(tx, 'student', id, student.name);
  if (plain(name) !== plain(student.name))
    return invalid('name', `Type the name as it stands here: ${student.name}. Nothing was erased.`);
  const erasure = await planErasure(tx, { student: id, called, keep });
  if (erasure === null) throw new Error('a student that is there has a name');

  // Courses are looked at before anything of them is changed.
  const shared = await coursesOfGroups(tx, erasure.traces.shared);
  for (const course of shared) await takeCourse(desk, course.id);
  for (const course of coursesWritten(erasure)) await takeCourse(desk, course);
  await applyErasure(tx, erasure);
  await settleFamily(tx, student.family);
  for (const course of coursesWritten(erasure)) touchCourse(desk, course, { replan: false });
  for (const { id: course } of shared) touchCourse(desk, course);
  await endEmptyGroups(desk, erasure);
  return ok(eraseLabel);
};

const plain = (name: string) => name.normalize('NFC').trim().replaceAll(/\s+/gu, ' ');

/** Courses of others in which a text or a list is written anew: windows that show them are told. */
const coursesWritten = ({ puts }: Erasure): ReadonlySet<CourseId> =>
  new Set(
    puts.flatMap(({ table, row }) =>
      table === 'course'
        ? [row.id as CourseId] // a row of that table
        : 'course' in row && typeof row.course === 'string'
          ? [row.course as CourseId] // the column holds ids of courses
          : [],
    ),
  );

/** A group that nobody is in any more, but that others have lessons of on record, ends today. */
async function endEmptyGroups(desk: Desk, { traces }: Erasure): Promise<void> {
  const { tx, today } = desk;
  const empty = traces.shared.filter(({ members }) => members.every((member) => member === traces.student));
  for (const course of await coursesOfGroups(tx, empty)) {
    if (course.ended !== null && course.ended < today) continue;
    await tx.put('course', { ...course, ended: today });
    await remakeLessons(desk, course.id);
  }
}
