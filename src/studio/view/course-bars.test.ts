import { expect, test } from 'vitest';
import { present } from '#core';
import { anaCourse, openCourseStudio } from '../testing/open-studio.contract.ts';
import { viewCourse } from './view-course.ts';

test('what was done with a clock only touched counts as done, with no minutes measured', async () => {
  const studio = await openCourseStudio();
  const { id: lesson } = present((await studio.lessons(anaCourse))[0], 'the first lesson');
  const { id: segment } = present(
    (await studio.segments(lesson)).find((s) => s.kind === 'work'),
    'a segment of work',
  );
  await studio.done({ type: 'segment.log', segment, seconds: 0, outcome: 'finished', share: null });
  await studio.done({ type: 'lesson.close', lesson, minutes: null });
  const view = await studio.store.read((r) => viewCourse(r, anaCourse, studio.outside()));
  const shown = view?.bars
    .flatMap((bar) => (bar.kind === 'lesson' ? bar.segments : []))
    .find((s) => s.id === segment);
  expect(shown).toMatchObject({ outcome: 'finished', actualMinutes: null });
});
