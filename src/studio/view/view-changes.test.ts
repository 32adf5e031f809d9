import { expect, test } from 'vitest';
import { present } from '#core';
import { anaCourse, openCourseStudio } from '../testing/open-studio.contract.ts';
import { viewChanges } from './view-changes.ts';

test('what only a running clock logged is told from what a person said', async () => {
  const studio = await openCourseStudio();
  const { id: lesson } = present((await studio.lessons(anaCourse))[0], 'the first lesson');
  const { id: segment } = present(
    (await studio.segments(lesson)).find((s) => s.kind === 'work'),
    'a segment of work',
  );
  const log = (seconds: number, outcome: 'partly' | null, share: number | null) =>
    studio.done({ type: 'segment.log', segment, seconds, outcome, share });
  await log(30, null, null);
  await log(60, null, null);
  await log(70, 'partly', 0.5);
  await log(100, 'partly', 0.5);
  await log(100, 'partly', 0.25);
  await studio.done({ type: 'lesson.close', lesson, minutes: null });
  // Afterwards, minutes are a correction by hand.
  await log(600, 'partly', 0.25);
  const { changes } = await studio.store.read((r) => viewChanges(r));
  expect(changes.slice(0, 7).map((change) => [change.type, change.clockOnly])).toEqual([
    ['segment.log', false],
    ['lesson.close', false],
    ['segment.log', false],
    ['segment.log', true],
    ['segment.log', false],
    ['segment.log', true],
    ['segment.log', true],
  ]);
});
