// Ana's course as the tests of views look at it, and its first lesson taught.

import type { CourseView, LessonBarView, LessonView } from '#contract';
import { present } from '#core';
import type { LessonRecord } from '../record/records.ts';
import { viewCourse } from '../view/view-course.ts';
import { viewLesson } from '../view/view-lesson.ts';
import { ana, anaCourse, id, type TestStudio } from './open-studio.contract.ts';

export const courseUnit = id('course-unit', 'ana-answers');
export const course = async (studio: TestStudio): Promise<CourseView> =>
  present(await studio.store.read((r) => viewCourse(r, anaCourse, studio.outside())), 'the course');
export const lessonBars = (view: CourseView): readonly LessonBarView[] =>
  view.bars.flatMap((b) => (b.kind === 'lesson' ? [b] : []));
export const lessonAt = async (studio: TestStudio, at: number): Promise<LessonRecord> =>
  present((await studio.lessons(anaCourse))[at], 'lesson');

export async function shownLesson(studio: TestStudio, at: number): Promise<LessonView> {
  const { id: lesson } = await lessonAt(studio, at);
  return present(await studio.store.read((r) => viewLesson(r, lesson)), 'the lesson');
}

/** Teaches the first lesson: the first activity finished with a level, the second not reached. */
export async function teachFirst(studio: TestStudio): Promise<void> {
  const first = await lessonAt(studio, 0);
  const [walk] = (await studio.segments(first.id)).filter((s) => s.kind === 'work');
  await studio.done({
    type: 'segment.log',
    segment: present(walk, 'walk').id,
    seconds: 900,
    outcome: 'finished',
    share: null,
  });
  await studio.done({
    type: 'observe',
    observation: id('observation', 'beat'),
    course: anaCourse,
    student: ana,
    lesson: first.id,
    skill: id('skill', 'steady-beat'),
    level: 3,
    note: '',
  });
  await studio.done({
    type: 'lesson.write',
    lesson: first.id,
    field: 'practice',
    base: '',
    text: 'Walk and clap',
  });
  await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
}
