// Lessons are counted over those that were or will be given: a cancelled or missed one has no number.

import type { LessonId, LessonRecord } from '../record/records.ts';

/** From 1, by date and time. The lessons come in that order. */
export function numberLessons(lessons: readonly LessonRecord[]): ReadonlyMap<LessonId, number> {
  const numbers = new Map<LessonId, number>();
  for (const lesson of lessons)
    if (lesson.status === 'planned' || lesson.status === 'taught') numbers.set(lesson.id, numbers.size + 1);
  return numbers;
}
