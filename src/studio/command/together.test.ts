import { expect, test } from 'vitest';
import type { Command, Step } from '#contract';
import { present } from '#core';
import { coursePlanner } from '../course/course-planner.ts';
import {
  anaCourse,
  id,
  openCourseStudio,
  otherUnit,
  slotOf,
  strandMain,
} from '../testing/open-studio.contract.ts';
import { readTables } from '../testing/random-command.contract.ts';
import { viewCourse } from '../view/view-course.ts';
import { whatIf } from '../view/what-if.ts';

/** Two lessons away, longer ones, and another unit: every one has seen the course as it is on screen. */
async function openTrial() {
  const studio = await openCourseStudio();
  const [first, second] = await studio.lessons(anaCourse);
  const seen = await studio.revision(anaCourse);
  const course = anaCourse;
  const steps: Step[] = [
    { type: 'lesson.cancel', lesson: present(first, 'first').id, reason: 'away' },
    { type: 'lesson.cancel', lesson: present(second, 'second').id, reason: 'away' },
    { type: 'slot.put', seen, course, slot: { ...slotOf('ana'), minutes: 45 } },
    {
      type: 'courseUnit.give',
      seen,
      course,
      courseUnit: id('course-unit', 'notes'),
      unit: otherUnit.id,
      strand: strandMain,
    },
  ];
  return { studio, seen, steps };
}

const together = (commands: readonly Step[]): Command => ({
  type: 'together',
  label: 'Kept what was tried',
  commands: [...commands],
});

test('[R-TOGETHER] several commands are one change: planned once, and taken back as one', async () => {
  const { studio, seen, steps } = await openTrial();
  const before = await studio.store.read(readTables);
  let plans = 0;
  const done = await studio.done(together(steps));
  expect(done).toMatchObject({ label: 'Kept what was tried', courses: [{ course: anaCourse }] });
  expect(await studio.revision(anaCourse)).toBe(seen + 1);
  expect(await studio.store.read((r) => r.listChanges(1))).toMatchObject([{ type: 'together' }]);
  const planner = {
    ...coursePlanner,
    planCourse: (...given: Parameters<typeof coursePlanner.planCourse>) => {
      plans++;
      return coursePlanner.planCourse(...given);
    },
  };
  await studio.done({ type: 'undo', change: done.change });
  await whatIf(studio.store, anaCourse, steps, { ...studio.outside(), planner });
  expect(plans).toBe(1);
  const after = await studio.store.read(readTables);
  expect(after.lesson).toEqual(before.lesson);
  expect(after.segment).toEqual(before.segment);
  expect(after.courseUnit).toEqual(before.courseUnit);
});

test('[R-TOGETHER] one that is refused leaves none of the others', async () => {
  const { studio, steps } = await openTrial();
  const before = await studio.store.read(readTables);
  const gone: Step = { type: 'lesson.cancel', lesson: id('lesson', 'none'), reason: '' };
  expect(await studio.send(together([...steps, gone]), 'refused')).toMatchObject({
    ok: false,
    error: { kind: 'NotFound' },
  });
  expect(await studio.store.read(readTables)).toEqual(before);
});

test('[R-TOGETHER] each sees what those before it did', async () => {
  const { studio, steps } = await openTrial();
  const [first] = steps;
  expect(
    await studio.send(together([present(first, 'first'), present(first, 'first')]), 'twice'),
  ).toMatchObject({
    ok: false,
    error: { kind: 'NotAllowedNow' },
  });
  const give = present(steps[3], 'the unit given');
  await studio.done(together([give, { ...give, courseUnit: id('course-unit', 'again') } as Step]));
  const course = present(
    await studio.store.read((r) => viewCourse(r, anaCourse, studio.outside())),
    'course',
  );
  expect(course.units.map((unit) => unit.position)).toEqual([0, 1, 2]);
});

test('[R-TOGETHER] what is kept is what was shown', async () => {
  const { studio, steps } = await openTrial();
  const shown = await whatIf(studio.store, anaCourse, steps, studio.outside());
  await studio.done(together(steps));
  const kept = present(await studio.store.read((r) => viewCourse(r, anaCourse, studio.outside())), 'course');
  const bars = (course: typeof kept) =>
    course.bars.map((bar) =>
      bar.kind === 'rest'
        ? bar
        : [bar.date, bar.minutes, bar.status, ...bar.segments.map((s) => [s.key, s.start, s.minutes])],
    );
  expect(shown.ok && bars(shown.value.course)).toEqual(bars(kept));
  expect(shown.ok && shown.value.course.moves).toEqual(kept.moves);
});
