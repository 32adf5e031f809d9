import { expect, test } from 'vitest';
import { addDays, createSeededRandom, type Id, type PlainDate, present } from '#core';
import {
  ana,
  anaCourse,
  ben,
  benCourse,
  day,
  id,
  newCourse,
  newStudent,
  openCourseStudio,
  openStudio,
  slotOf,
  type TestStudio,
} from '../testing/open-studio.contract.ts';
import { randomCommand, readTables } from '../testing/random-command.contract.ts';
import { lessonAt } from '../testing/taught-course.contract.ts';

/** Deleted sounds never come back; terms and holidays taken back lay the lessons anew, which is a change of its own. */
const isApart = (type: string) => type === 'take.eraseSounds' || /^(term|holiday)\./.test(type);

const undo = (change: string) => ({ type: 'undo', change: id('change', change) }) as const;

async function takeAllBack(studio: TestStudio, takeBack: readonly Id<'change'>[] | undefined) {
  for (const change of present(takeBack, 'what to take back')) await studio.done({ type: 'undo', change });
}

test('[R-UNDO-2] all that came later on the same rows is named, newest first, and that much is enough', async () => {
  const studio = await openCourseStudio();
  const { id: lesson } = await lessonAt(studio, 0);
  const before = await studio.store.read((r) => r.get('lesson', lesson));
  const write = (base: string, text: string) =>
    ({ type: 'lesson.write', lesson, field: 'note', base, text }) as const;
  await studio.send(write('', 'low G'), 'first');
  await studio.done(write('low G', 'low G is there'));
  await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
  await studio.done({ type: 'lesson.close', lesson, minutes: 40 });
  const fault = await studio.refused(undo('first'));
  expect(fault.message).toMatch(/2 later changes build on it\. Take these back first, in this order:$/);
  expect(fault.details?.[0]).toBe('Closed Ana’s lesson of 7 September');
  expect(fault.details).toHaveLength(2);
  await takeAllBack(studio, fault.takeBack);
  expect(await studio.store.read((r) => r.get('lesson', lesson))).toEqual(before);
  // What stood apart stays.
  expect(await studio.store.read((r) => r.get('student', ben))).not.toBeNull();
});

test('[R-UNDO-3] what hangs on a change is named with all that stands on it in turn', async () => {
  const studio = await openStudio();
  await studio.send({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) }, 'ben');
  await studio.done({ type: 'course.open', course: newCourse(benCourse, ben), slot: slotOf('ben', '17:00') });
  const [first] = await studio.lessons(benCourse);
  await studio.done({ type: 'lesson.cancel', lesson: present(first, 'a lesson').id, reason: '' });
  const fault = await studio.refused(undo('ben'));
  expect(fault.details).toEqual(['Cancelled Ben’s lesson of 7 September', 'Opened a course for Ben']);
  await takeAllBack(studio, fault.takeBack);
  expect(await studio.store.read((r) => r.get('student', ben))).toBeNull();
});

test('[R-UNDO-3] a lesson comes back only with the unit its work is of, though the lesson itself comes back, too', async () => {
  const studio = await openCourseStudio();
  await studio.send({ type: 'student.leave', seen: 1, student: ana, on: day('2026-09-07') }, 'leaves');
  const seen = await studio.revision(anaCourse);
  await studio.send(
    { type: 'courseUnit.remove', seen, courseUnit: id('course-unit', 'ana-answers') },
    'unit off',
  );
  const fault = await studio.refused(undo('leaves'));
  expect(fault.takeBack).toEqual(['change:unit off', 'change:leaves']);
  await takeAllBack(studio, fault.takeBack);
  expect((await studio.lessons(anaCourse)).length).toBeGreaterThan(10);
});

test('what was taken back meanwhile is not named, nor is the taking back', async () => {
  const studio = await openCourseStudio();
  const { id: lesson } = await lessonAt(studio, 0);
  const write = (base: string, text: string) =>
    ({ type: 'lesson.write', lesson, field: 'note', base, text }) as const;
  await studio.send(write('', 'a'), 'first');
  await studio.send(write('a', 'b'), 'second');
  await studio.done(undo('second'));
  await studio.done({ type: 'lesson.bar', lesson, barred: true });
  const fault = await studio.refused(undo('first'));
  expect(fault.message).toMatch(/Take back “Keeps free Ana’s lesson of 7 September” first\.$/);
  await takeAllBack(studio, fault.takeBack);
});

test('the same said many times is named once, with how often', async () => {
  const studio = await openCourseStudio();
  const { id: lesson } = await lessonAt(studio, 0);
  const segment = present(
    (await studio.segments(lesson)).find((s) => s.kind === 'work'),
    'work',
  ).id;
  const log = (seconds: number) =>
    ({ type: 'segment.log', segment, seconds, outcome: null, share: null }) as const;
  await studio.send(log(60), 'first');
  for (const seconds of [120, 180, 240]) await studio.done(log(seconds));
  const fault = await studio.refused(undo('first'));
  expect(fault.details).toEqual(['Logged “walk the beat” for Ana (3 times)']);
  expect(fault.takeBack).toHaveLength(4);
});

test.each([11, 12, 13, 14, 15, 16, 17, 18])(
  'law: taking back what a refusal names, in its order, is not refused, seed %i',
  async (seed) => {
    const random = createSeededRandom(seed);
    const studio = await openCourseStudio();
    let today = '2026-09-07' as PlainDate;
    const changes: string[] = [];
    for (let step = 0; step < 40; step++) {
      if (random.next() < 0.15) {
        today = addDays(today, 1 + Math.floor(random.next() * 4));
        studio.setToday(today);
      }
      const tables = await studio.store.read(readTables);
      const command = randomCommand(tables, changes.slice(-12), today, random);
      if (command === null || isApart(command.type)) continue;
      if ((await studio.send(command, `s${step}`)).ok) changes.push(`change:s${step}`);
    }
    let named = 0;
    for (const change of changes) {
      const reply = await studio.send({ type: 'undo', change: change as Id<'change'> });
      if (reply.ok || reply.error.takeBack === undefined) continue;
      named++;
      for (const one of reply.error.takeBack) {
        const back = await studio.send({ type: 'undo', change: one });
        if (back.ok) continue;
        expect(back.error.message, `seed ${seed}: ${change} named ${one}, which was refused`).toBe('');
      }
    }
    expect(named).toBeGreaterThan(0);
  },
);
