import { describe, expect, test } from 'vitest';
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
  openStudio,
  slotOf,
} from '../testing/open-studio.contract.ts';
import { viewCourse } from '../view/view-course.ts';
import { viewStudents } from '../view/view-students.ts';

const readCourse = async (studio: Awaited<ReturnType<typeof openStudio>>) =>
  present(await studio.store.read((r) => r.get('course', anaCourse)), 'the course');

describe('a course follows its player’s stage', () => {
  const anaAt = (stage: 'beginner' | 'elementary' | 'advanced') => ({
    ...newStudent(ana, 'Ana', 2017),
    instruments: [{ instrument: 'recorder_descant' as const, stage }],
  });

  test('to the next stage, planned anew, and back again with Undo', async () => {
    const studio = await openCourseStudio();
    const before = await studio.revision(anaCourse);
    const { change } = await studio.done({ type: 'student.change', seen: 1, student: anaAt('elementary') });
    expect((await readCourse(studio)).stage).toBe('elementary');
    expect(await studio.revision(anaCourse)).toBeGreaterThan(before);
    await studio.done({ type: 'undo', change });
    expect((await readCourse(studio)).stage).toBe('beginner');
  });

  test('not when the course was set apart by hand, nor when it has ended', async () => {
    const studio = await openStudio();
    const seen = () => studio.revision(anaCourse);
    await studio.done({ type: 'course.change', seen: await seen(), course: anaCourse, stage: 'advanced' });
    await studio.done({ type: 'student.change', seen: 1, student: anaAt('elementary') });
    expect((await readCourse(studio)).stage).toBe('advanced');
    await studio.done({ type: 'course.change', seen: await seen(), course: anaCourse, stage: 'elementary' });
    await studio.done({ type: 'course.end', seen: await seen(), course: anaCourse, on: day('2026-10-01') });
    await studio.done({ type: 'student.change', seen: 2, student: anaAt('advanced') });
    expect((await readCourse(studio)).stage).toBe('elementary');
  });
});

describe('a course that ended goes on again', () => {
  test('with the lessons it had', async () => {
    const studio = await openStudio();
    const dates = async () => (await studio.lessons(anaCourse)).map((l) => l.date);
    const before = await dates();
    const end = async (on: ReturnType<typeof day> | null) =>
      studio.done({ type: 'course.end', seen: await studio.revision(anaCourse), course: anaCourse, on });
    await end(day('2026-10-01'));
    expect((await dates()).at(-1)).toBe('2026-09-28');
    await end(null);
    expect(await dates()).toEqual(before);
  });

  test('but not while its student has left', async () => {
    const studio = await openStudio();
    await studio.done({ type: 'student.leave', seen: 1, student: ana, on: day('2026-10-01') });
    const seen = await studio.revision(anaCourse);
    const fault = await studio.refused({ type: 'course.end', seen, course: anaCourse, on: null });
    expect(fault.message).toBe('Ana has left. Take Ana back first, and the course goes on too.');
  });
});

describe('someone who leaves a group is in it up to their last day', () => {
  const trio = id('course', 'trio');

  test('in the list, in its lessons and for its age', async () => {
    const studio = await openStudio();
    await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2019) });
    const group = { id: id('group', 'two'), name: 'The two', members: [ana, ben] };
    await studio.done({ type: 'group.put', seen: 0, group });
    await studio.done({
      type: 'course.open',
      course: { ...newCourse(trio, ana), student: null, group: group.id },
      slot: slotOf('two', '17:00', 2),
    });
    await studio.done({ type: 'student.leave', seen: 1, student: ben, on: day('2026-09-15') });
    const rows = async () => {
      const { students } = await studio.store.read((r) => viewStudents(r, studio.outside()));
      return students.map((s) => [s.name, s.here, s.next?.date]);
    };
    const learner = async () => {
      const view = await studio.store.read((r) => viewCourse(r, trio, studio.outside()));
      const { members, age } = present(view, 'the course').learner;
      return [members.map((m) => m.name), age];
    };
    expect(await rows()).toEqual([
      ['Ana', true, '2026-09-07'],
      ['Ben', true, '2026-09-08'],
    ]);
    expect(await learner()).toEqual([['Ana', 'Ben'], 7]);
    studio.setToday('2026-09-16');
    expect(await rows()).toEqual([
      ['Ana', true, '2026-09-21'],
      ['Ben', false, undefined],
    ]);
    expect(await learner()).toEqual([['Ana'], 9]);
  });
});

describe('a group', () => {
  const two = { id: id('group', 'two'), name: 'The two', members: [ana] };
  const openGroup = async () => {
    const studio = await openStudio();
    await studio.done({ type: 'group.put', seen: 0, group: two });
    const course = { ...newCourse(benCourse, ana), student: null, group: two.id };
    await studio.done({ type: 'course.open', course, slot: slotOf('two', '17:00') });
    return studio;
  };
  const remove = { type: 'group.remove', seen: 1, group: two.id } as const;

  test('whose course has ended is told from one that goes on', async () => {
    const studio = await openGroup();
    const shown = async () =>
      (await studio.store.read((r) => viewStudents(r, studio.outside()))).groups[0]?.ended;
    expect(await shown()).toBeNull();
    const seen = await studio.revision(benCourse);
    await studio.done({ type: 'course.end', seen, course: benCourse, on: day('2026-09-20') });
    studio.setToday('2026-09-20');
    expect(await shown()).toBeNull();
    studio.setToday('2026-09-21');
    expect(await shown()).toBe('2026-09-20');
    // A group without a course waits for one.
    await studio.done({ type: 'group.put', seen: 0, group: { ...two, id: id('group', 'late'), name: 'Z' } });
    const { groups } = await studio.store.read((r) => viewStudents(r, studio.outside()));
    expect(groups.map((g) => g.ended)).toEqual(['2026-09-20', null]);
  });

  test('that was never taught goes with its course, and comes back with Undo', async () => {
    const studio = await openGroup();
    const before = await studio.lessons(benCourse);
    const { change } = await studio.done(remove);
    expect(await studio.lessons(benCourse)).toEqual([]);
    await studio.done({ type: 'undo', change });
    expect(await studio.lessons(benCourse)).toEqual(before);
  });

  test('that was taught stays on record; only while its course goes on is ending it the way', async () => {
    const studio = await openGroup();
    const [first] = await studio.lessons(benCourse);
    await studio.done({ type: 'lesson.close', lesson: present(first, 'a lesson').id, minutes: null });
    const stays = 'The two has lessons that were taught, and they stay on record.';
    expect((await studio.refused(remove)).message).toBe(
      `${stays} End its course on the course’s page instead.`,
    );
    const seen = await studio.revision(benCourse);
    await studio.done({ type: 'course.end', seen, course: benCourse, on: day('2026-10-01') });
    expect((await studio.refused(remove)).message).toBe(stays);
  });
});

test('who was entered without an instrument plays, from the first course on, what it is for', async () => {
  const studio = await openStudio();
  await studio.done({ type: 'student.add', student: { ...newStudent(ben, 'Ben', 2012), instruments: [] } });
  const plays = () => studio.store.read(async (r) => (await r.get('student', ben))?.instruments);
  const { change } = await studio.done({
    type: 'course.open',
    course: newCourse(benCourse, ben),
    slot: null,
  });
  expect(await plays()).toEqual([{ instrument: 'recorder_descant', stage: 'beginner' }]);
  await studio.done({ type: 'undo', change });
  expect(await plays()).toEqual([]);
});
