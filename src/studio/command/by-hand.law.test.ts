import { expect, test } from 'vitest';
import {
  anaCourse,
  id,
  openCourseStudio,
  otherUnit,
  strandMain,
  type TestStudio,
  unit,
} from '../testing/open-studio.contract.ts';

const seen = (studio: TestStudio) => studio.revision(anaCourse);

async function openFull(): Promise<TestStudio> {
  const studio = await openCourseStudio();
  await studio.done({
    type: 'courseUnit.give',
    seen: await seen(studio),
    course: anaCourse,
    courseUnit: id('course-unit', 'notes'),
    unit: otherUnit.id,
    strand: strandMain,
  });
  return studio;
}

test('[R-HAND-1] [R-HAND-2] every segment into every lesson: it stands there, or the refusal says why; lessons stay whole', async () => {
  const studio = await openFull();
  const lessons = (await studio.lessons(anaCourse)).slice(0, 5);
  const segments = (
    await studio.store.read((r) => r.list('segment', { where: { course: anaCourse } }))
  ).filter((s) => s.kind === 'work' || s.kind === 'revisit' || s.kind === 'extension');
  let stood = 0;
  let refused = 0;
  for (const segment of segments)
    for (const lesson of lessons) {
      const change = `move-${segment.id.slice(8)}-${lesson.date}`;
      const reply = await studio.send(
        {
          type: 'segment.move',
          seen: await seen(studio),
          segment: segment.id,
          lesson: lesson.id,
          minutes: null,
        },
        change,
      );
      if (!reply.ok) {
        refused++;
        expect(reply.error.message).toMatch(/rests on|do not fit/);
        continue;
      }
      stood++;
      const there = await studio.segments(lesson.id);
      expect(
        there.find((s) => s.id === segment.id),
        `${segment.title} into ${lesson.date}`,
      ).toMatchObject({
        pinned: true,
        title: segment.title,
        minutes: segment.minutes,
      });
      expect(there.reduce((sum, s) => sum + s.minutes, 0)).toBe(30);
      expect((await studio.send({ type: 'undo', change: id('change', change) }, `${change}-undo`)).ok).toBe(
        true,
      );
    }
  expect(stood).toBeGreaterThan(5);
  expect(refused).toBeGreaterThan(5);
});

test('[R-HAND-3] every activity added to a lesson to come stands there, or the refusal says why', async () => {
  const studio = await openFull();
  const [, , third] = await studio.lessons(anaCourse);
  if (third === undefined) throw new Error('three lessons');
  for (const { key } of [...unit.activities, ...unit.extensions]) {
    const reply = await studio.send(
      {
        type: 'segment.add',
        lesson: third.id,
        segment: id('segment', key),
        courseUnit: id('course-unit', 'ana-answers'),
        activity: key,
        minutes: 6,
      },
      key,
    );
    if (!reply.ok) {
      expect(reply.error.message).toMatch(/rests on|do not fit/);
      continue;
    }
    expect(
      (await studio.segments(third.id)).find((s) => s.id === id('segment', key)),
      key,
    ).toMatchObject({ pinned: true, activity: key });
    await studio.done({ type: 'undo', change: id('change', key) });
  }
});
