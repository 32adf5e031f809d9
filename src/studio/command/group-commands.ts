// Groups: students who share a lesson.

import { ok } from '#core';
import { type Handler, takeCourse, touchCourse } from './desk.ts';
import { changedElsewhere, invalid, notAllowed, notFound } from './fault.ts';
import { removeCourse } from './remove-course.ts';

export const putGroup: Handler<'group.put'> = async (desk, { seen, group }) => {
  const { tx } = desk;
  const now = await tx.get('group', group.id);
  if (!desk.imagining && (now?.revision ?? 0) !== seen)
    return now === null
      ? notFound('group')
      : changedElsewhere(tx, 'group', group.id, `The group ${now.name}`);
  if (new Set(group.members).size < group.members.length)
    return invalid('group.members', 'A student is in the group twice.');
  for (const member of group.members)
    if ((await tx.get('student', member)) === null) return notFound('student');
  // Who is in it decides the age that its courses are planned for.
  const courses = now === null ? [] : await tx.list('course', { where: { group: group.id } });
  for (const { id } of courses) await takeCourse(desk, id);
  await tx.put('group', { ...group, revision: (now?.revision ?? 0) + 1 });
  for (const { id } of courses) touchCourse(desk, id);
  return ok(now === null ? `Added the group ${group.name}` : `Changed the group ${group.name}`);
};

export const removeGroup: Handler<'group.remove'> = async (desk, { seen, group: id }) => {
  const { tx } = desk;
  const group = await tx.get('group', id);
  if (group === null) return notFound('group');
  if (!desk.imagining && group.revision !== seen)
    return changedElsewhere(tx, 'group', id, `The group ${group.name}`);
  const courses = await tx.list('course', { where: { group: id } });
  const allTakes = await tx.list('take');
  for (const { id: course, ended } of courses) {
    const lessons = await tx.list('lesson', { where: { course } });
    const taught = lessons.filter((l) => l.status === 'taught');
    const takes = allTakes.filter((t) =>
      lessons.some(({ id: lesson }) => t.takenIn === lesson || t.practiceOf === lesson),
    );
    if (taught.length + takes.length > 0)
      return notAllowed(
        `${group.name} has ${taught.length > 0 ? 'lessons that were taught' : 'takes'}, and they stay on record.${ended === null ? ' End its course on the course’s page instead.' : ''}`,
      );
  }
  for (const course of courses) await removeCourse(tx, course.id);
  await tx.remove('group', id);
  return ok(`Removed the group ${group.name}`);
};
