// Segments by hand: pinned, moved, put in on the spot; and activities set aside or taken up again.

import type { CommandOf, Fault } from '#contract';
import { createId, err, ok, present, type Result } from '#core';
import { type Activity, applyVariant, formatDay } from '#planning';
import { ageOfLearner, type CourseRecords, isSettled, segmentsOf } from '../course/course-records.ts';
import { fitSegments, layEndToEnd, minutesToSpare } from '../lesson/fit-segments.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { CourseUnitRecord, LessonRecord, SegmentId, SegmentRecord } from '../record/records.ts';
import { isSameRow } from '../record/same-row.ts';
import { type Desk, type Handler, takeCourse, takeSeenCourse, touchCourse } from './desk.ts';
import { invalid, notAllowed, notFound } from './fault.ts';
import { findPlaceFault } from './find-place-fault.ts';

export const pinSegment: Handler<'segment.pin'> = async (desk, { seen, segment: id, pinned }) => {
  const taken = await takeSegment(desk, id, seen);
  if (!taken.ok) return taken;
  const { segment, lesson, records } = taken.value;
  const refused = findHandFault(desk, records, lesson, segment);
  if (refused !== null) return refused;
  if (segment.pinned !== pinned) {
    await desk.tx.put('segment', { ...segment, pinned });
    touchCourse(desk, segment.course);
  }
  return ok(
    `${pinned ? 'Pinned' : 'Let go of'} “${segment.title}” in ${records.learner.name}’s lesson of ${formatDay(lesson.date)}`,
  );
};

export const moveSegment: Handler<'segment.move'> = async (desk, command) => {
  const taken = await takeSegment(desk, command.segment, command.seen);
  if (!taken.ok) return taken;
  const { segment, lesson, records } = taken.value;
  const refused = findHandFault(desk, records, lesson, segment);
  if (refused !== null) return refused;
  const target = records.lessons.find((l) => l.id === command.lesson);
  if (target === undefined) return notFound('lesson on this course');
  const targetRefused = findTargetFault(desk, records, target);
  if (targetRefused !== null) return targetRefused;
  const minutes = command.minutes ?? segment.minutes;
  const place = await findPlaceFault(desk, records, segment, target, minutes);
  if (place !== null) return notAllowed(place);
  await desk.tx.put('segment', { ...segment, lesson: target.id, minutes, pinned: true });
  touchCourse(desk, segment.course);
  return ok(`Moved “${segment.title}” to ${records.learner.name}’s lesson of ${formatDay(target.date)}`);
};

export const addSegment: Handler<'segment.add'> = async (desk, command) => {
  const { tx } = desk;
  const lesson = await tx.get('lesson', command.lesson);
  if (lesson === null) return notFound('lesson');
  const records = present(await takeCourse(desk, lesson.course), 'the course of a lesson');
  if (lesson.status === 'cancelled' || lesson.status === 'missed')
    return notAllowed(
      `The lesson of ${formatDay(lesson.date)} is marked as ${lesson.status}. Restore it first.`,
    );
  const unit = records.units.find((u) => u.id === command.courseUnit);
  if (unit === undefined) return notFound('unit on this course');
  const activity = findActivity(records, unit, command.activity, lesson);
  if (activity === null) return notFound('activity in this unit');
  if ((await tx.get('segment', command.segment)) !== null)
    return invalid('segment', 'This was added to the lesson already.');
  await dropAsides(desk, records, unit, command.activity);
  const row = newSegment(records, lesson, unit, activity, command);
  const segments = segmentsOf(records, lesson.id);
  if (!isSettled(records, lesson, desk.today) || segments.length === 0) {
    // In a lesson to come it is pinned, and planning makes the room.
    const place = await findPlaceFault(desk, records, row, lesson, command.minutes);
    if (place !== null) return notAllowed(place);
    await tx.put('segment', { ...row, pinned: true });
  } else {
    const put = await putOnTheSpot(desk, segments, row, lesson);
    if (!put.ok) return put;
  }
  touchCourse(desk, lesson.course);
  return ok(`Added “${activity.title}” to ${records.learner.name}’s lesson of ${formatDay(lesson.date)}`);
};

export const setActivityAside: Handler<'activity.setAside'> = async (desk, command) => {
  const taken = await takeSeenCourse(desk, command.course, command.seen);
  if (!taken.ok) return taken;
  const records = taken.value;
  const unit = records.units.find((u) => u.id === command.courseUnit);
  const activity = unit === undefined ? null : findActivity(records, unit, command.activity, null);
  if (unit === undefined || activity === null) return notFound('activity on this course');
  if (command.backFrom !== null && command.backFrom <= desk.today)
    return invalid('backFrom', 'The day from which it comes back must lie ahead.');
  await dropAsides(desk, records, unit, command.activity);
  await desk.tx.put('setAside', {
    id: createId('set-aside', desk.outside.random),
    course: command.course,
    courseUnit: unit.id,
    activity: command.activity,
    since: desk.today,
    backFrom: command.backFrom,
  });
  touchCourse(desk, command.course);
  return ok(`Set “${activity.title}” aside for ${records.learner.name}`);
};

export const takeActivityUp: Handler<'activity.takeUp'> = async (desk, command) => {
  const taken = await takeSeenCourse(desk, command.course, command.seen);
  if (!taken.ok) return taken;
  const records = taken.value;
  const unit = records.units.find((u) => u.id === command.courseUnit);
  const activity = unit === undefined ? null : findActivity(records, unit, command.activity, null);
  if (unit === undefined || activity === null) return notFound('activity on this course');
  const dropped = await dropAsides(desk, records, unit, command.activity);
  if (dropped === 0) return notAllowed(`“${activity.title}” is not set aside.`);
  touchCourse(desk, command.course);
  return ok(`Took “${activity.title}” up again for ${records.learner.name}`);
};

interface TakenSegment {
  readonly segment: SegmentRecord;
  readonly lesson: LessonRecord;
  readonly records: CourseRecords;
}

async function takeSegment(desk: Desk, id: SegmentId, seen: number): Promise<Result<TakenSegment, Fault>> {
  const row = await desk.tx.get('segment', id);
  if (row === null) return notFound('part of a lesson');
  const taken = await takeSeenCourse(desk, row.course, seen);
  if (!taken.ok) return taken;
  const lesson = taken.value.lessons.find((l) => l.id === row.lesson);
  return lesson === undefined ? notFound('lesson') : ok({ segment: row, lesson, records: taken.value });
}

/** Why a segment cannot be pinned or moved by hand, or null. */
function findHandFault(desk: Desk, records: CourseRecords, lesson: LessonRecord, segment: SegmentRecord) {
  if (segment.kind !== 'revisit' && workOf(segment) === null)
    return notAllowed(`“${segment.title}” belongs to its lesson and stays in it.`);
  return findTargetFault(desk, records, lesson);
}

/** Why nothing can be planned by hand in a lesson, or null. */
function findTargetFault(desk: Desk, records: CourseRecords, lesson: LessonRecord) {
  const day = formatDay(lesson.date);
  if (lesson.status !== 'planned') return notAllowed(`The lesson of ${day} is marked as ${lesson.status}.`);
  if (lesson.date < desk.today) return notAllowed(`The lesson of ${day} is past and waits to be closed.`);
  if (isSettled(records, lesson, desk.today))
    return notAllowed(`The lesson of ${day} is under way: what is in it stays until it is closed.`);
  return null;
}

function findActivity(
  records: CourseRecords,
  unit: CourseUnitRecord,
  key: string,
  lesson: LessonRecord | null,
): Activity | null {
  const { activities, extensions } = unit.document;
  const found = [...activities, ...extensions].find((a) => a.key === key);
  if (found === undefined) return null;
  const age = lesson === null ? null : ageOfLearner(records.learner.students, lesson.date);
  return applyVariant(found, { stage: records.course.stage, age });
}

async function dropAsides(
  desk: Desk,
  records: CourseRecords,
  unit: CourseUnitRecord,
  activity: string,
): Promise<number> {
  const known = records.setAside.filter((a) => a.courseUnit === unit.id && a.activity === activity);
  for (const aside of known) await desk.tx.remove('setAside', aside.id);
  return known.length;
}

function newSegment(
  records: CourseRecords,
  lesson: LessonRecord,
  unit: CourseUnitRecord,
  activity: Activity,
  command: CommandOf<'segment.add'>,
): SegmentRecord {
  const isExtension = unit.document.extensions.some((e) => e.key === command.activity);
  const goes = [...records.segmentsByLesson.values()].flat().filter((s) => {
    const work = workOf(s);
    return work?.courseUnit === unit.id && work.activity === command.activity;
  });
  return {
    id: command.segment,
    lesson: lesson.id,
    course: lesson.course,
    position: 0,
    key: `work:${unit.id}:${command.activity}:${goes.length}`,
    kind: isExtension ? 'extension' : 'work',
    strand: unit.strand,
    courseUnit: unit.id,
    activity: command.activity,
    skill: null,
    title: activity.title,
    start: 0,
    minutes: command.minutes,
    completes: false,
    pinned: false,
    reasons: [{ kind: 'pinned' }],
    seconds: null,
    covered: null,
    outcome: null,
    note: '',
  };
}

/** Puts a segment before the setting of practice; its minutes come from the rest of the lesson. */
async function putOnTheSpot(
  desk: Desk,
  segments: readonly SegmentRecord[],
  row: SegmentRecord,
  lesson: LessonRecord,
): Promise<Result<null, Fault>> {
  const spare = minutesToSpare(segments);
  if (spare < 1)
    return err({
      kind: 'NotAllowedNow',
      message: `There are no minutes left in the lesson of ${formatDay(lesson.date)}. Make the lesson longer, or log what is done.`,
    });
  const minutes = Math.min(row.minutes, spare);
  if (minutes < row.minutes)
    desk.notices.push(`Only ${minutes} of ${row.minutes} minutes were left for it in this lesson.`);
  const practice = segments.findIndex((s) => s.kind === 'practice');
  const at = practice < 0 ? segments.length : practice;
  // A time on it keeps the new segment from being cut down in its turn.
  const kept = { ...row, minutes, outcome: 'partly' as const, seconds: minutes * 60 };
  const fitted = fitSegments(
    layEndToEnd([...segments.slice(0, at), kept, ...segments.slice(at)]),
    lesson.minutes,
  );
  const next = fitted.map((s) => (s.id === row.id ? { ...s, outcome: null, seconds: null } : s));
  for (const segment of segments)
    if (!next.some((n) => n.id === segment.id)) await desk.tx.remove('segment', segment.id);
  for (const segment of next) {
    const before = segments.find((s) => s.id === segment.id);
    if (before === undefined || !isSameRow(before, segment)) await desk.tx.put('segment', segment);
  }
  return ok(null);
}
