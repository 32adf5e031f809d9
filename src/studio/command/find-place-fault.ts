// Why work cannot stand in a lesson where a teacher would put it by hand, in words; planning itself never puts it there.

import { formatDay, formulateProblem } from '#planning';
import { assembleCourseInput } from '../course/assemble-course-input.ts';
import { type CourseRecords, segmentsOf } from '../course/course-records.ts';
import { loadLibrary } from '../course/replan-course.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { LessonRecord, SegmentRecord } from '../record/records.ts';
import { formatCount } from '../sentence/amounts.ts';
import type { Desk } from './desk.ts';

/** A sentence, or null when it may stand there. */
export async function findPlaceFault(
  desk: Desk,
  records: CourseRecords,
  segment: SegmentRecord,
  target: LessonRecord,
  minutes: number,
): Promise<string | null> {
  return (
    findRoomFault(records, segment, target, minutes) ??
    findRevisitFault(records, segment, target) ??
    (await findOrderFault(desk, records, segment, target))
  );
}

/** Pinned minutes, settling in and setting practice must leave room. */
function findRoomFault(
  records: CourseRecords,
  segment: SegmentRecord,
  target: LessonRecord,
  minutes: number,
): string | null {
  const day = formatDay(target.date);
  if (target.barred) return `The lesson of ${day} is kept free of planned work. Open it for planning first.`;
  const { settlingIn, settingPractice } = records.course.settings;
  const pinned = segmentsOf(records, target.id)
    .filter((s) => s.pinned && s.id !== segment.id)
    .reduce((sum, s) => sum + s.minutes, 0);
  const room = target.minutes - settlingIn - settingPractice - pinned;
  if (minutes <= room) return null;
  const because =
    pinned > 0
      ? `${formatCount(pinned, 'minute')} of it are pinned already`
      : 'the rest is settling in and setting practice';
  return `${formatCount(minutes, 'minute')} do not fit into the lesson of ${day}: it has room for ${Math.max(0, room)}, ${because}.`;
}

/** A revisit that follows from work still to be done comes after it. */
function findRevisitFault(
  records: CourseRecords,
  segment: SegmentRecord,
  target: LessonRecord,
): string | null {
  const { kind, courseUnit, activity } = segment;
  if (kind !== 'revisit' || courseUnit === null || activity === null) return null;
  const last = lastPlanned(records, courseUnit, activity);
  if (last === null || last.lesson.date < target.date) return null;
  return `“${segment.title}” rests on “${last.title}”, which is planned until ${formatDay(last.lesson.date)}. A revisit comes after that.`;
}

/** The last planned lesson that works on an activity. */
function lastPlanned(
  records: CourseRecords,
  courseUnit: string,
  activity: string,
): { readonly lesson: LessonRecord; readonly title: string } | null {
  for (const lesson of [...records.lessons].reverse()) {
    if (lesson.status !== 'planned') continue;
    const found = segmentsOf(records, lesson.id).find((s) => {
      const work = workOf(s);
      return work?.courseUnit === courseUnit && work.activity === activity;
    });
    if (found !== undefined) return { lesson, title: found.title };
  }
  return null;
}

/** What it rests on must be done, or planned no later than that lesson. */
async function findOrderFault(
  desk: Desk,
  records: CourseRecords,
  segment: SegmentRecord,
  target: LessonRecord,
): Promise<string | null> {
  const work = workOf(segment);
  if (work === null) return null;
  const library = await loadLibrary(desk.tx);
  const { order, openById } = formulateProblem(assembleCourseInput(records, library, desk.today));
  const own = order.sequence.find(
    (a) => a.courseUnit === work.courseUnit && a.activity.key === work.activity,
  );
  if (own === undefined) return null;
  const missing = order.missingById.get(own.id) ?? [];
  if (missing.length > 0) {
    const titles = missing.map((id) => library.skills.find((s) => s.id === id)?.title ?? id);
    return `“${segment.title}” rests on ${titles.map((t) => `“${t}”`).join(' and ')}, which no unit of this course teaches and the student does not have yet.`;
  }
  for (const id of order.predsById.get(own.id) ?? []) {
    const open = openById.get(id);
    if (open === undefined || open.remaining.demand <= 0) continue;
    const { courseUnit, activity } = open.activity;
    const title = activity.title;
    const last = lastPlanned(records, courseUnit, activity.key);
    if (last === null)
      return `“${segment.title}” rests on “${title}”, which is not done and not planned in any lesson.`;
    if (last.lesson.date > target.date)
      return `“${segment.title}” rests on “${title}”, which is planned until ${formatDay(last.lesson.date)}, after the lesson of ${formatDay(target.date)}. Move that one first.`;
  }
  return null;
}
