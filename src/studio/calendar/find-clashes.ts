// Lessons that overlap with a lesson of another course: told, never refused, for a teacher may share a room or a pupil.

import { minutesOf, type PlainDate } from '#core';
import { formatDay } from '#planning';
import { loadLearner } from '../course/course-records.ts';
import type { CourseId, LessonRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** Descriptions of the overlaps of a course's lessons in a stretch of days (without `to`: from a day on): "Ben on 12 May at 15:30". */
export async function findClashes(
  reader: Reader,
  course: CourseId,
  from: PlainDate,
  to?: PlainDate,
): Promise<readonly string[]> {
  const lessons = await reader.list('lesson', {
    where: { status: 'planned' },
    range: to === undefined ? { column: 'date', from } : { column: 'date', from, to },
    orderBy: ['date', 'time'],
  });
  const byDate = new Map<PlainDate, LessonRecord[]>();
  for (const lesson of lessons) {
    const list = byDate.get(lesson.date);
    if (list === undefined) byDate.set(lesson.date, [lesson]);
    else list.push(lesson);
  }
  const clashes: string[] = [];
  const names = new Map<CourseId, string>();
  for (const own of lessons) {
    if (own.course !== course) continue;
    for (const other of byDate.get(own.date) ?? []) {
      if (other.course === course || !overlap(own, other)) continue;
      let name = names.get(other.course);
      if (name === undefined) {
        const row = await reader.get('course', other.course);
        name = row === null ? 'another lesson' : (await loadLearner(reader, row)).name;
        names.set(other.course, name);
      }
      clashes.push(`${name} on ${formatDay(other.date)} at ${other.time}`);
    }
  }
  return clashes;
}

/** Whether two appointments of one day share any minute. */
export function overlap(
  a: Pick<LessonRecord, 'time' | 'minutes'>,
  b: Pick<LessonRecord, 'time' | 'minutes'>,
): boolean {
  const from = minutesOf(a.time);
  const to = minutesOf(b.time);
  return from < to + b.minutes && to < from + a.minutes;
}
