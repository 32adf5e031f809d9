// One lesson: added, moved, cancelled, missed, restored, barred. The rest of its course flows around it.

import type { Fault } from '#contract';
import { err, ok, type PlainDate, type Result } from '#core';
import { formatDay } from '#planning';
import { findClashes } from '../calendar/find-clashes.ts';
import { findSpan } from '../calendar/lesson-dates.ts';
import { type CourseRecords, isLogged, segmentsOf } from '../course/course-records.ts';
import type { LessonId, LessonRecord } from '../record/records.ts';
import { formatList } from '../sentence/amounts.ts';
import { type Desk, type Handler, takeCourse, takeSeenCourse, touchCourse } from './desk.ts';
import { invalid, notAllowed, notFound } from './fault.ts';
import { refitLesson } from './refit-lesson.ts';

export const addLesson: Handler<'lesson.add'> = async (desk, { seen, course: id, lesson }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  if ((await desk.tx.get('lesson', lesson.id)) !== null)
    return invalid('lesson.id', 'This lesson was added already.');
  await desk.tx.put('lesson', {
    ...lesson,
    course: id,
    status: 'planned',
    reason: '',
    slot: null,
    slotDate: null,
    barred: false,
    note: '',
    practice: '',
    overrun: 0,
    ongoing: [],
    absent: null,
  });
  await tellClashes(desk, id, lesson.id);
  await tellDay(desk, lesson.date);
  touchCourse(desk, id);
  return ok(`Added a lesson on ${formatDay(lesson.date)} for ${taken.value.learner.name}`);
};

export const cancelLesson: Handler<'lesson.cancel'> = (desk, { lesson, reason }) =>
  setAsideLesson(desk, lesson, 'cancelled', reason);

export const missLesson: Handler<'lesson.miss'> = (desk, { lesson, reason }) =>
  setAsideLesson(desk, lesson, 'missed', reason);

export const restoreLesson: Handler<'lesson.restore'> = async (desk, { lesson: id }) => {
  const taken = await takeLesson(desk, id);
  if (!taken.ok) return taken;
  const { lesson, records } = taken.value;
  if (lesson.status === 'planned')
    return notAllowed(`The lesson of ${formatDay(lesson.date)} is on already.`);
  if (lesson.status === 'taught')
    return notAllowed(
      `The lesson of ${formatDay(lesson.date)} was taught. Correct its log, or undo its closing under Changes.`,
    );
  await desk.tx.put('lesson', { ...lesson, status: 'planned', reason: '' });
  touchCourse(desk, lesson.course);
  return ok(`Restored ${records.learner.name}’s lesson of ${formatDay(lesson.date)}`);
};

export const moveLesson: Handler<'lesson.move'> = async (desk, { lesson: id, date, time, minutes }) => {
  const taken = await takeLesson(desk, id);
  if (!taken.ok) return taken;
  const { lesson, records } = taken.value;
  if (lesson.status !== 'planned')
    return notAllowed(
      `The lesson of ${formatDay(lesson.date)} is marked as ${lesson.status}; only a planned lesson can be moved.`,
    );
  const moved = { ...lesson, date, time, minutes };
  await desk.tx.put('lesson', moved);
  // A lesson under way keeps its segments; they are fitted to its new length by hand.
  if (minutes !== lesson.minutes) await refitLesson(desk.tx, segmentsOf(records, id), moved);
  await tellClashes(desk, lesson.course, id);
  if (date !== lesson.date) await tellDay(desk, date);
  touchCourse(desk, lesson.course);
  const name = records.learner.name;
  return ok(
    date === lesson.date
      ? `Changed ${name}’s lesson of ${formatDay(date)}`
      : `Moved ${name}’s lesson of ${formatDay(lesson.date)} to ${formatDay(date)}`,
  );
};

export const barLesson: Handler<'lesson.bar'> = async (desk, { lesson: id, barred }) => {
  const taken = await takeLesson(desk, id);
  if (!taken.ok) return taken;
  const { lesson, records } = taken.value;
  if (lesson.status !== 'planned')
    return notAllowed(`The lesson of ${formatDay(lesson.date)} is marked as ${lesson.status}.`);
  await desk.tx.put('lesson', { ...lesson, barred });
  touchCourse(desk, lesson.course);
  const what = barred ? 'Keeps free' : 'Plans again in';
  return ok(`${what} ${records.learner.name}’s lesson of ${formatDay(lesson.date)}`);
};

/** A day that a hand may have mistaken is told, not refused. */
async function tellDay({ tx, today, notices }: Desk, date: PlainDate): Promise<void> {
  const holiday = findSpan(await tx.list('holiday'), date);
  if (holiday !== null) notices.push(`${formatDay(date)} lies in the holidays: ${holiday.name}.`);
  if (date < today) notices.push(`${formatDay(date)} ${date.slice(0, 4)} has passed.`);
}

async function setAsideLesson(
  desk: Desk,
  id: LessonId,
  status: 'cancelled' | 'missed',
  reason: string,
): Promise<Result<string, Fault>> {
  const taken = await takeLesson(desk, id);
  if (!taken.ok) return taken;
  const { lesson, records } = taken.value;
  const day = formatDay(lesson.date);
  if (lesson.status === 'taught')
    return notAllowed(`The lesson of ${day} was taught. Undo its closing under Changes first.`);
  if (isLogged(segmentsOf(records, id)))
    return notAllowed(
      `The lesson of ${day} has begun: times or outcomes are logged in it. Close it instead.`,
    );
  if (lesson.status === status && lesson.reason === reason)
    return notAllowed(`The lesson of ${day} is marked as ${status} already.`);
  await desk.tx.put('lesson', { ...lesson, status, reason });
  touchCourse(desk, lesson.course);
  const done = status === 'cancelled' ? 'Cancelled' : 'Marked as missed:';
  return ok(`${done} ${records.learner.name}’s lesson of ${day}`);
}

async function takeLesson(
  desk: Desk,
  id: LessonId,
): Promise<Result<{ readonly lesson: LessonRecord; readonly records: CourseRecords }, Fault>> {
  const row = await desk.tx.get('lesson', id);
  if (row === null) return notFound('lesson');
  const records = await takeCourse(desk, row.course);
  if (records === null) return err({ kind: 'NotFound', message: 'The course of this lesson is gone.' });
  return ok({ lesson: row, records });
}

async function tellClashes(desk: Desk, course: LessonRecord['course'], lesson: LessonId): Promise<void> {
  const row = await desk.tx.get('lesson', lesson);
  if (row === null) return;
  const clashes = await findClashes(desk.tx, course, row.date, row.date);
  if (clashes.length > 0) desk.notices.push(`At the same time as another: ${formatList(clashes, 3)}.`);
}
