// What happened in a lesson: times, outcomes and levels as they are noted, and closing the lesson. Logs and levels come
// from the same patient queue as text and are not refused for being late.

import type { Fault } from '#contract';
import { addDays, createId, err, ok, type Result } from '#core';
import { formatDay } from '#planning';
import { type CourseRecords, loadCourse, segmentsOf } from '../course/course-records.ts';
import { learnStudioPace } from '../course/learn-studio-pace.ts';
import { expectedPace, reckonCovered, usualMinutesLeft } from '../lesson/reckon.ts';
import { recountWork } from '../lesson/recount-work.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { LessonRecord, SegmentRecord } from '../record/records.ts';
import { studioId } from '../record/studio-id.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { notAllowed, notFound } from './fault.ts';
import { refitLesson } from './refit-lesson.ts';

export const logSegment: Handler<'segment.log'> = async (desk, command) => {
  const { tx } = desk;
  const segment = await tx.get('segment', command.segment);
  if (segment === null) return notFound('part of the lesson');
  const records = await takeCourse(desk, segment.course);
  const lesson = records?.lessons.find((l) => l.id === segment.lesson);
  if (records === null || lesson === undefined) return notFound('lesson');
  if (lesson.status === 'cancelled' || lesson.status === 'missed')
    return notAllowed(
      `The lesson of ${formatDay(lesson.date)} is marked as ${lesson.status}. Restore it before you log what happened in it.`,
    );
  const logged: SegmentRecord = {
    ...segment,
    seconds: command.seconds ?? segment.seconds,
    outcome: command.outcome,
    covered: null,
  };
  const covered =
    lesson.status === 'planned' && command.share !== null
      ? coveredByShare(records, logged, command.share)
      : null;
  await tx.put('segment', { ...logged, covered });
  desk.clockOnly =
    lesson.status === 'planned' && logged.outcome === segment.outcome && covered === segment.covered;
  if (lesson.status === 'taught') {
    // A correction afterwards: everything from here on is counted anew, and the plan follows.
    const now = (await loadCourse(tx, segment.course)) ?? records;
    const share = { segment: segment.id, share: command.share };
    for (const changed of recountWork(now, { closing: null, share })) await tx.put('segment', changed);
    await keepAsides(desk, now, lesson);
    touchCourse(desk, segment.course, { taught: [lesson.id] });
  } else touchCourse(desk, segment.course, { replan: false });
  return ok(`Logged “${segment.title}” for ${records.learner.name}`);
};

export const observe: Handler<'observe'> = async (desk, command) => {
  const { tx } = desk;
  const records = await takeCourse(desk, command.course);
  if (records === null) return notFound('course');
  const skill = await tx.get('skill', command.skill);
  if (skill === null) return notFound('skill');
  if (command.student !== null && !records.learner.students.some((s) => s.id === command.student))
    return notFound('student on this course');
  const lesson = command.lesson === null ? null : records.lessons.find((l) => l.id === command.lesson);
  if (lesson === undefined) return notFound('lesson');
  const { student } = command;
  if (lesson !== null && student !== null && lesson.absent?.includes(student)) {
    const name = records.learner.students.find((s) => s.id === student)?.name ?? 'This student';
    return notAllowed(
      `${name} was not there on ${formatDay(lesson.date)}: nothing is recorded in that lesson. Say first that ${name} was there.`,
    );
  }
  const take = command.take === undefined ? null : await tx.get('take', command.take);
  if (command.take !== undefined && take === null) return notFound('take');
  const date = lesson?.date ?? desk.today;
  await tx.put('observation', {
    id: command.observation,
    course: command.course,
    // On a course of one the level is that student's, whether or not the sender said so.
    student: command.student ?? records.course.student,
    lesson: command.lesson,
    skill: command.skill,
    level: command.level,
    date,
    notedAt: desk.outside.clock.instant(),
    note: command.note,
    // Another level for the same observation rests on the take named before, until another is named.
    take: take?.id ?? (await tx.get('observation', command.observation))?.take ?? null,
  });
  touchCourse(desk, command.course, {
    // While a lesson is under way its closing replans; a level noted outside of one counts at once.
    replan: lesson === null || lesson.status === 'taught',
  });
  return ok(`Noted ${levelNames[command.level]} for “${skill.title}”, ${records.learner.name}`);
};

const levelNames = ['not yet', 'introduced', 'with help', 'alone', 'transfers'] as const;

export const removeObservation: Handler<'observe.remove'> = async (desk, { observation: id }) => {
  const observation = await desk.tx.get('observation', id);
  if (observation === null) return notFound('level');
  const records = await takeCourse(desk, observation.course);
  const lesson = records?.lessons.find((l) => l.id === observation.lesson);
  await desk.tx.remove('observation', id);
  touchCourse(desk, observation.course, { replan: lesson === undefined || lesson.status === 'taught' });
  const skill = await desk.tx.get('skill', observation.skill);
  return ok(`Took back a level of “${skill?.title ?? 'a skill'}”, ${records?.learner.name ?? 'a student'}`);
};

export const closeLesson: Handler<'lesson.close'> = async (desk, { lesson: id, minutes }) => {
  const { tx } = desk;
  const row = await tx.get('lesson', id);
  if (row === null) return notFound('lesson');
  const records = await takeCourse(desk, row.course);
  if (records === null) return notFound('course');
  const refused = findCloseFault(desk, row);
  if (!refused.ok) return refused;
  const lesson = { ...row, status: 'taught', reason: '', minutes: minutes ?? row.minutes } as const;
  await tx.put('lesson', lesson);
  if (lesson.minutes !== row.minutes) await refitLesson(tx, segmentsOf(records, id), lesson);
  const now = (await loadCourse(tx, row.course)) ?? records;
  const before = segmentsOf(now, id);
  for (const changed of recountWork(now, { closing: id, share: null })) await tx.put('segment', changed);
  const closed = (await loadCourse(tx, row.course)) ?? now;
  await keepAsides(desk, closed, lesson);
  const studio = await tx.get('studio', studioId);
  if (studio !== null)
    await tx.put('studio', { ...studio, pace: await learnStudioPace(tx, studio.pace, desk.today) });
  const hasWork = before.some((s) => workOf(s) !== null);
  const hasDone = segmentsOf(closed, id).some((s) => workOf(s) !== null && s.outcome !== 'skipped');
  if (hasWork && !hasDone)
    desk.notices.push(
      'Nothing was marked in this lesson, so nothing counts as done and its work moves on. If it was taught as planned, mark its segments now: the plan follows.',
    );
  touchCourse(desk, row.course, { taught: [id] });
  return ok(`Closed ${records.learner.name}’s lesson of ${formatDay(row.date)}`);
};

function findCloseFault(desk: Desk, lesson: LessonRecord): Result<null, Fault> {
  const day = formatDay(lesson.date);
  if (lesson.status === 'taught')
    return notAllowed(`The lesson of ${day} is closed already. What you correct in its log counts at once.`);
  if (lesson.status !== 'planned')
    return notAllowed(`The lesson of ${day} is marked as ${lesson.status}. Restore it before you close it.`);
  if (lesson.date > desk.today)
    return err({
      kind: 'NotAllowedNow',
      message: `The lesson of ${day} is still to come. Move it to the day on which it was taught, then close it.`,
    });
  return ok(null);
}

function coveredByShare(records: CourseRecords, segment: SegmentRecord, share: number): number | null {
  const work = workOf(segment);
  if (work === null) return null;
  const done = records.lessons
    .filter((l) => l.status === 'taught')
    .flatMap((l) => segmentsOf(records, l.id))
    .flatMap((s) => {
      const of = workOf(s);
      return of === null ? [] : [{ ...of, covered: s.covered ?? 0 }];
    });
  const left = usualMinutesLeft(records, work, done);
  return left === null ? null : reckonCovered({ segment, left, pace: expectedPace(records), share });
}

/** Records what this lesson set aside, and lets go of what it finished or took up again. */
async function keepAsides(desk: Desk, records: CourseRecords, lesson: LessonRecord): Promise<void> {
  const { tx, outside } = desk;
  for (const segment of segmentsOf(records, lesson.id)) {
    const { outcome } = segment;
    const work = workOf(segment);
    if (work === null || outcome === null || outcome === 'skipped') continue;
    const { courseUnit, activity } = work;
    const known = records.setAside.filter((a) => a.courseUnit === courseUnit && a.activity === activity);
    if (outcome === 'setAside') {
      if (known.some((a) => a.since >= lesson.date)) continue;
      for (const old of known) await tx.remove('setAside', old.id);
      await tx.put('setAside', {
        id: createId('set-aside', outside.random),
        course: records.course.id,
        courseUnit,
        activity,
        since: lesson.date,
        backFrom: backFrom(records, lesson),
      });
    } else for (const old of known) if (old.since <= lesson.date) await tx.remove('setAside', old.id);
  }
}

/** The day from which something set aside comes back: after `parkGap` lessons, or as many weeks where none are planned. */
function backFrom(records: CourseRecords, lesson: LessonRecord) {
  const { parkGap } = records.course.settings;
  const later = records.lessons.filter((l) => l.status === 'planned' && l.date > lesson.date);
  return later[parkGap]?.date ?? addDays(lesson.date, 7 * (parkGap + 1));
}
