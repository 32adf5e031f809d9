// Brings a course's coming lessons in line with its slots, terms and holidays, in the store.

import { createId } from '#core';
import { reconcileLessons } from '../calendar/reconcile-lessons.ts';
import { isBegun } from '../course/course-records.ts';
import type { CourseId, LessonId, SlotRecord } from '../record/records.ts';
import { type Desk, touchCourse } from './desk.ts';

export interface Remade {
  readonly added: number;
  readonly changed: number;
  readonly removed: readonly LessonId[];
}

/**
 * Adds, changes and removes lessons from today on and touches the course if there was anything to do. The course must be
 * in hand. `slotsBefore`: the slots as they were, where the command has just changed them.
 */
export async function remakeLessons(
  desk: Desk,
  course: CourseId,
  slotsBefore?: readonly SlotRecord[],
): Promise<Remade> {
  const { tx, outside, today } = desk;
  const where = { course };
  const slots = await tx.list('slot', { where });
  const lessons = await tx.list('lesson', { where, orderBy: ['date', 'time'] });
  const segments = await tx.list('segment', { where });
  const observations = await tx.list('observation', { where });
  const begun = new Set<LessonId>(observations.flatMap((o) => (o.lesson === null ? [] : [o.lesson])));
  for (const segment of segments) if (isBegun([segment])) begun.add(segment.lesson);
  for (const { lesson } of await tx.list('lessonMaterial', { where })) begun.add(lesson);
  const { added, changed, removed } = reconcileLessons({
    course,
    slots,
    slotsBefore: slotsBefore ?? slots,
    lessons,
    begun,
    terms: await tx.list('term'),
    holidays: await tx.list('holiday'),
    today,
    ended: (await tx.get('course', course))?.ended ?? null,
  });
  for (const lesson of added) await tx.put('lesson', { ...lesson, id: createId('lesson', outside.random) });
  for (const lesson of changed) await tx.put('lesson', lesson);
  for (const lesson of removed) {
    for (const segment of segments) if (segment.lesson === lesson.id) await tx.remove('segment', segment.id);
    await tx.remove('lesson', lesson.id);
  }
  if (added.length + changed.length + removed.length > 0) touchCourse(desk, course);
  return { added: added.length, changed: changed.length, removed: removed.map((l) => l.id) };
}
