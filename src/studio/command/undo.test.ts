import { describe, expect, test } from 'vitest';
import type { Command } from '#contract';
import { present } from '#core';
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
  openStore,
  openStudio,
  slotOf,
  strandMain,
  type TestStudio,
  unit,
} from '../testing/open-studio.contract.ts';
import { readTables } from '../testing/random-command.contract.ts';

const undo = (change: string): Command => ({ type: 'undo', change: id('change', change) });
const rows = async (studio: TestStudio) =>
  Object.fromEntries(
    Object.entries(await studio.store.read(readTables)).map(([name, list]) => [
      name,
      (list as readonly object[]).map((row) => ({ ...row, revision: 0 })),
    ]),
  );

describe('[R-UNDO-1] [R-UNDO-4] undo restores, undoing the undo does it again', () => {
  const cases: readonly [string, (studio: TestStudio) => Promise<Command>][] = [
    [
      'student.addMany',
      async () => ({
        type: 'student.addMany',
        students: [newStudent(ben, 'Ben', 2012), newStudent(id('student', 'eva'), 'Eva', 2013)],
      }),
    ],
    [
      'lesson.close',
      async (s) => ({
        type: 'lesson.close',
        lesson: present((await s.lessons(anaCourse))[0], 'lesson').id,
        minutes: null,
      }),
    ],
    [
      'unit.save',
      async () => ({
        type: 'unit.save',
        seenVersion: 1,
        document: { ...unit, title: 'Answers in four bars' },
      }),
    ],
    [
      'courseUnit.remove',
      async (s) => ({
        type: 'courseUnit.remove',
        seen: await s.revision(anaCourse),
        courseUnit: id('course-unit', 'ana-answers'),
      }),
    ],
    ['term.remove', async () => ({ type: 'term.remove', term: id('term', 'autumn') })],
    ['student.remove', async () => ({ type: 'student.remove', seen: 1, student: ana })],
    [
      'lesson.cancel',
      async (s) => ({
        type: 'lesson.cancel',
        lesson: present((await s.lessons(anaCourse))[2], 'lesson').id,
        reason: 'ill',
      }),
    ],
  ];
  test.each(cases)('%s', async (_, make) => {
    const studio = await openCourseStudio();
    const before = await rows(studio);
    expect((await studio.send(await make(studio), 'it')).ok).toBe(true);
    const after = await rows(studio);
    expect(after).not.toEqual(before);
    const revision = await studio.revision(anaCourse);
    expect((await studio.send(undo('it'), 'back')).ok).toBe(true);
    expect(await rows(studio)).toEqual(before);
    expect(await studio.revision(anaCourse)).toBeGreaterThanOrEqual(revision);
    expect((await studio.send(undo('back'), 'again')).ok).toBe(true);
    expect(await rows(studio)).toEqual(after);
    expect((await studio.send(undo('it'), 'back-2')).ok).toBe(true);
    expect(await rows(studio)).toEqual(before);
    expect((await studio.refused(undo('it'))).message).toContain('taken back already');
  });
});

test('[R-UNDO-2] what came later on the same rows is named, and has to go first', async () => {
  const studio = await openCourseStudio();
  const [first, second] = await studio.lessons(anaCourse);
  await studio.send({ type: 'lesson.cancel', lesson: present(second, 'second').id, reason: 'ill' }, 'cancel');
  await studio.send({ type: 'lesson.close', lesson: present(first, 'first').id, minutes: null }, 'close');
  const fault = await studio.refused(undo('cancel'));
  expect(fault.kind).toBe('ChangedElsewhere');
  expect(fault.message).toContain('Closed Ana’s lesson of 7 September');
  await studio.done(undo('close'));
  await studio.done(undo('cancel'));
});

test('[R-UNDO-2] looking at what moved, and notes elsewhere, do not stand in the way', async () => {
  const studio = await openCourseStudio();
  const [first, second] = await studio.lessons(anaCourse);
  await studio.send({ type: 'lesson.close', lesson: present(first, 'first').id, minutes: null }, 'close');
  await studio.done({ type: 'course.looked', course: anaCourse });
  await studio.done({
    type: 'event.put',
    seen: await studio.revision(anaCourse),
    course: anaCourse,
    event: { id: id('event', 'recital'), date: day('2026-12-05'), title: 'Recital' },
  });
  await studio.done(undo('close'));
  expect((await studio.lessons(anaCourse))[0]?.status).toBe('planned');
  expect(second).toBeDefined();
});

test('[R-UNDO-3] a student with a course since is not taken back; nor is a course whose student is gone brought back', async () => {
  const studio = await openStudio();
  await studio.send({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) }, 'ben');
  await studio.send(
    { type: 'course.open', course: newCourse(benCourse, ben), slot: slotOf('ben', '17:00') },
    'course',
  );
  expect((await studio.refused(undo('ben'))).message).toContain('a course');
  await studio.send(undo('course'), 'no-course');
  await studio.done(undo('ben'));
  expect((await studio.refused(undo('no-course'))).message).toContain('a student');
});

test('a studio is founded once, and a change that never was cannot be taken back', async () => {
  const studio = await openStudio();
  expect(
    (
      await studio.refused({
        type: 'studio.found',
        name: 'x',
        teacher: '',
        timeZone: 'UTC',
        locale: 'en',
        starterUnits: false,
      })
    ).kind,
  ).toBe('NotAllowedNow');
  expect((await studio.refused(undo('never'))).kind).toBe('NotFound');
  const empty = await openStore();
  expect(
    (await empty.refused({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) })).message,
  ).toContain('no studio here yet');
  expect(
    (
      await empty.refused({
        type: 'studio.found',
        name: 'x',
        teacher: '',
        timeZone: 'Mars/Olympus',
        locale: 'en',
        starterUnits: false,
      })
    ).field,
  ).toBe('timeZone');
});

describe('[R-SEEN] two windows never overwrite each other silently', () => {
  test('a course changed since is refused, naming the change; nothing is saved', async () => {
    const studio = await openCourseStudio();
    const seen = await studio.revision(anaCourse);
    const [first] = await studio.lessons(anaCourse);
    await studio.done({ type: 'lesson.bar', lesson: present(first, 'first').id, barred: true });
    const before = await rows(studio);
    const fault = await studio.refused({
      type: 'course.end',
      seen,
      course: anaCourse,
      on: day('2026-10-01'),
    });
    expect(fault.kind).toBe('ChangedElsewhere');
    expect(fault.message).toContain('Keeps free Ana’s lesson of 7 September');
    expect(await rows(studio)).toEqual(before);
    await studio.done({ type: 'course.end', seen: seen + 1, course: anaCourse, on: day('2026-10-01') });
    expect((await studio.lessons(anaCourse)).at(-1)?.date).toBe('2026-09-28');
  });

  test('students, units and the studio itself', async () => {
    const studio = await openStudio();
    const student = { ...newStudent(ana, 'Ana', 2017), note: 'left-handed' };
    await studio.done({ type: 'student.change', seen: 1, student });
    expect((await studio.refused({ type: 'student.change', seen: 1, student })).kind).toBe(
      'ChangedElsewhere',
    );
    await studio.done({ type: 'unit.save', seenVersion: 1, document: unit });
    expect((await studio.refused({ type: 'unit.save', seenVersion: 1, document: unit })).message).toContain(
      'Saved the unit',
    );
    await studio.done({ type: 'studio.change', seen: 1, paper: 'Letter' });
    expect((await studio.refused({ type: 'studio.change', seen: 1, paper: 'A4' })).kind).toBe(
      'ChangedElsewhere',
    );
  });
});

describe('[R-STUDENT] [R-COURSE] students and courses', () => {
  test('[R-STUDENT-1] with taught lessons a student only leaves', async () => {
    const studio = await openCourseStudio();
    await studio.done({
      type: 'lesson.close',
      lesson: present((await studio.lessons(anaCourse))[0], 'lesson').id,
      minutes: null,
    });
    expect((await studio.refused({ type: 'student.remove', seen: 1, student: ana })).message).toContain(
      'stay on record',
    );
  });

  test('[R-STUDENT-2] leaving ends the course; coming back takes it up again', async () => {
    const studio = await openCourseStudio();
    const all = (await studio.lessons(anaCourse)).length;
    await studio.done({ type: 'student.leave', seen: 1, student: ana, on: day('2026-09-30') });
    expect(await studio.lessons(anaCourse)).toHaveLength(4);
    await studio.done({ type: 'student.return', seen: 2, student: ana });
    expect(await studio.lessons(anaCourse)).toHaveLength(all);
  });

  test('[R-COURSE-1] one student or one group; strands with names of their own', async () => {
    const studio = await openStudio();
    const course = newCourse(benCourse, ana);
    const strand = { id: strandMain, name: 'Rhythm', ink: 0 as const, priority: 1, deadline: null };
    expect(
      (await studio.refused({ type: 'course.open', course: { ...course, student: null }, slot: null })).field,
    ).toBe('course.student');
    expect(
      (
        await studio.refused({
          type: 'course.open',
          course: { ...course, strands: [strand, { ...strand, id: id('strand', 'b'), name: 'rhythm' }] },
          slot: null,
        })
      ).message,
    ).toContain('same name');
  });

  test('[R-GROUP] a group has a course of its own, for the age of its youngest', async () => {
    const studio = await openStudio();
    await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
    await studio.done({
      type: 'group.put',
      seen: 0,
      group: { id: id('group', 'duo'), name: 'Duo', members: [ana, ben] },
    });
    await studio.done({
      type: 'course.open',
      course: { ...newCourse(benCourse, ana), student: null, group: id('group', 'duo') },
      slot: slotOf('duo', '18:00'),
    });
    const { viewCourse } = await import('#studio');
    const view = await studio.store.read((r) => viewCourse(r, benCourse, studio.outside()));
    expect(view?.learner).toMatchObject({ name: 'Duo', age: 9, members: [{ name: 'Ana' }, { name: 'Ben' }] });
  });
});

test('an undo of an undo of an undo says that it takes back', async () => {
  const studio = await openStudio();
  const labels: string[] = [];
  let { change } = await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
  for (let n = 0; n < 4; n++) {
    const reply = await studio.done({ type: 'undo', change });
    labels.push(reply.label);
    change = reply.change;
  }
  expect(labels).toEqual([
    'Took back: Added Ben',
    'Did again: Added Ben',
    'Took back: Added Ben',
    'Did again: Added Ben',
  ]);
});

test('a holiday or a term that is taken back lays the lessons of courses opened since, too', async () => {
  const studio = await openStore('2026-09-07');
  const span = (starts: string, ends: string) => ({ starts: day(starts), ends: day(ends) });
  await studio.done({
    type: 'studio.found',
    name: 'Harbour Street',
    teacher: 'Mira Solberg',
    timeZone: 'Europe/Lisbon',
    locale: 'en-GB',
    starterUnits: false,
  });
  const term = { id: id('term', 'a'), name: 'Autumn', ...span('2026-09-07', '2026-09-30') };
  const termPut = await studio.done({ type: 'term.put', term });
  const holiday = { id: id('holiday', 'h'), name: 'Feast', source: '', ...span('2026-09-14', '2026-09-14') };
  const holidayPut = await studio.done({ type: 'holiday.putMany', holidays: [holiday] });
  await studio.done({ type: 'student.add', student: newStudent(ana, 'Ana', 2017) });
  await studio.done({ type: 'course.open', course: newCourse(anaCourse, ana), slot: slotOf('ana') });
  const days = async () => (await studio.lessons(anaCourse)).map((l) => l.date.slice(8)).join(' ');
  expect(await days()).toBe('07 21 28');
  const back = await studio.done({ type: 'undo', change: holidayPut.change });
  expect(await days()).toBe('07 14 21 28');
  await studio.done({ type: 'undo', change: back.change });
  expect(await days()).toBe('07 21 28');
  await studio.done({ type: 'undo', change: termPut.change });
  expect(await days()).toBe('');
});
