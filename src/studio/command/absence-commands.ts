// Who was not there in a lesson of a group.

import { ok } from '#core';
import { formatDay } from '#planning';
import { studentsOn } from '../course/course-records.ts';
import type { StudentId } from '../record/records.ts';
import { formatList } from '../sentence/amounts.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { notAllowed, notFound } from './fault.ts';

export const noteAbsent: Handler<'lesson.absent'> = async (desk, { lesson: id, absent }) => {
  const { tx } = desk;
  const lesson = await tx.get('lesson', id);
  if (lesson === null) return notFound('lesson');
  const records = await takeCourse(desk, lesson.course);
  if (records === null) return notFound('course');
  const { learner } = records;
  const day = formatDay(lesson.date);
  if (learner.group === null)
    return notAllowed(`${learner.name} has lessons alone. Mark the lesson of ${day} as missed instead.`);
  if (lesson.status === 'cancelled' || lesson.status === 'missed')
    return notAllowed(
      `The lesson of ${day} is marked as ${lesson.status}. Restore it before you say who was there.`,
    );
  // In the order of the group; who was in it and is no more stays as noted.
  const wanted = new Set(absent);
  const kept = (lesson.absent ?? []).filter(
    (s) => wanted.has(s) && !learner.students.some((m) => m.id === s),
  );
  const away = [...learner.students.filter((s) => wanted.has(s.id)).map((s) => s.id), ...kept];
  if (away.length < wanted.size) return notFound('student on this course');
  if (studentsOn(learner.students, lesson.date).every((s) => wanted.has(s.id)))
    return notAllowed(`Nobody of ${learner.name} was there. Mark the lesson of ${day} as missed instead.`);
  const observed = records.observations.find(
    (o) => o.lesson === id && o.student !== null && wanted.has(o.student),
  );
  if (observed !== undefined) {
    const name = learner.students.find((s) => s.id === observed.student)?.name ?? 'This student';
    return notAllowed(
      `A level was noted for ${name} in the lesson of ${day}. Take it back first, or leave ${name} among those who were there.`,
    );
  }
  await tx.put('lesson', { ...lesson, absent: away.length === 0 ? null : away });
  touchCourse(desk, lesson.course, { replan: false });
  if (away.length === 0) return ok(`Noted that all of ${learner.name} were there on ${day}`);
  const names = learner.students.filter((s) => wanted.has(s.id)).map((s) => s.name);
  return ok(
    names.length === 1
      ? `Noted that ${names[0]} was not there on ${day}`
      : `Noted that ${formatList(names)} were not there on ${day}`,
  );
};

/** A student who goes for good is named in no lesson any more. */
export async function forgetAbsent({ tx }: Pick<Desk, 'tx'>, student: StudentId): Promise<void> {
  for (const lesson of await tx.list('lesson')) {
    if (!lesson.absent?.includes(student)) continue;
    const rest = lesson.absent.filter((s) => s !== student);
    await tx.put('lesson', { ...lesson, absent: rest.length === 0 ? null : rest });
  }
}
