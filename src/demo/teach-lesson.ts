// One taught lesson of the demo: minutes run at this student's true pace, levels follow how readily they learn, and what
// the clock cuts off is carried over, as in life.

import type { LessonSegmentView, LessonView } from '#contract';
import { chooseOne, type PlainDate, present, randomNormal } from '#core';
import type { Level, SkillId } from '#planning';
import { type LessonId, viewLesson } from '#studio';
import type { DemoDesk } from './demo-desk.ts';
import { lessonNotes, lessonPractice } from './notes.data.ts';
import type { DemoCourse } from './open-courses.ts';

/** How far off the plan's reckoning of this student's pace still is after so many taught lessons. */
const surprise = (pace: number, taught: number): number => pace ** (2 / (taught + 2));

/** Teaches and closes the lesson. `nth` counts this course's taught lessons before it. */
export async function teachLesson(
  desk: DemoDesk,
  { student }: DemoCourse,
  id: LessonId,
  day: PlainDate,
  nth: number,
): Promise<void> {
  const lesson = present(await desk.store.read((reader) => viewLesson(reader, id)), 'the lesson to teach');
  const time = lesson.time;
  let left = lesson.minutes;
  for (const segment of lesson.segments) {
    const wanted = segment.minutes * (isWork(segment) ? workFactor(desk, student.pace, nth) : 1);
    const minutes = Math.min(Math.max(left, 0), wanted);
    left -= minutes;
    const reached = wanted > 0 ? minutes / wanted : 0;
    await logSegment(desk, day, segment, minutes, reached);
    if (reached > 0.95) await observeSegment(desk, day, lesson, segment, student.quick);
  }
  if (desk.random.next() < 0.7)
    await desk.send(
      day,
      { type: 'lesson.write', lesson: id, field: 'note', base: '', text: pick(desk, lessonNotes) },
      time,
    );
  await desk.send(
    day,
    {
      type: 'lesson.write',
      lesson: id,
      field: 'practice',
      base: lesson.practice,
      text: lesson.suggestedPractice === '' ? pick(desk, lessonPractice) : lesson.suggestedPractice,
    },
    time,
  );
  await desk.send(day, { type: 'lesson.close', lesson: id, minutes: null }, time);
}

const isWork = ({ kind }: LessonSegmentView): boolean => kind === 'work' || kind === 'extension';

const workFactor = (desk: DemoDesk, pace: number, nth: number): number =>
  surprise(pace, nth) * Math.exp(0.18 * randomNormal(desk.random));

async function logSegment(
  desk: DemoDesk,
  day: PlainDate,
  segment: LessonSegmentView,
  minutes: number,
  reached: number,
): Promise<void> {
  const log = { type: 'segment.log', segment: segment.id, seconds: Math.round(minutes * 60) } as const;
  if (!isWork(segment)) await desk.send(day, { ...log, outcome: null, share: null });
  else if (reached < 0.25) await desk.send(day, { ...log, outcome: 'skipped', share: null });
  else if (reached < 0.95)
    await desk.send(day, { ...log, outcome: 'partly', share: Math.round(reached * 4) / 4 });
  else
    await desk.send(day, {
      ...log,
      outcome: segment.completes ? 'finished' : 'partly',
      share: segment.completes ? null : 1,
    });
}

/** Levels are noted where an activity ends and where a skill comes back. */
async function observeSegment(
  desk: DemoDesk,
  day: PlainDate,
  lesson: LessonView,
  segment: LessonSegmentView,
  quick: number,
): Promise<void> {
  if (!segment.completes && segment.kind !== 'revisit') return;
  for (const { skill, level } of segment.skills.slice(0, 2))
    await desk.send(day, {
      type: 'observe',
      observation: desk.mint('observation'),
      course: lesson.course,
      student: lesson.learner.student,
      lesson: lesson.id,
      skill: skill satisfies SkillId,
      level: nextLevel(desk, level ?? 0, quick),
      note: '',
    });
}

function nextLevel(desk: DemoDesk, level: Level, quick: number): Level {
  const luck = desk.random.next();
  if (level < 2) return luck < quick * 0.35 ? 3 : luck < 0.5 + quick * 0.45 ? 2 : 1;
  if (luck < 0.12) return 2;
  return luck < 0.45 + quick * 0.4 ? 3 : level === 2 ? 2 : 4;
}

const pick = (desk: DemoDesk, lines: readonly string[]): string => chooseOne(desk.random, lines);
