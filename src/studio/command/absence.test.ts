import { describe, expect, test } from 'vitest';
import { createFixedClock, type Id, present } from '#core';
import { createMemoryStore } from '#storage';
import {
  ana,
  ben,
  benCourse,
  day,
  id,
  newCourse,
  newStudent,
  openStudio,
  slotOf,
  strandMain,
  time,
  unit,
} from '../testing/open-studio.contract.ts';
import { viewCourse } from '../view/view-course.ts';
import { viewDay } from '../view/view-day.ts';
import { viewLesson } from '../view/view-lesson.ts';
import { viewStudents } from '../view/view-students.ts';

const group = { id: id('group', 'duo'), name: 'The duo', members: [ana, ben] };
const cleo = id('student', 'cleo');
const beat = id('skill', 'steady-beat');

/** A group of Ana and Ben, with a unit, on Mondays at 17:00. */
async function openGroup() {
  const studio = await openStudio();
  await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2015) });
  await studio.done({ type: 'group.put', seen: 0, group });
  const course = { ...newCourse(benCourse, ana), student: null, group: group.id };
  await studio.done({ type: 'course.open', course, slot: slotOf('duo', '17:00') });
  await studio.done({
    type: 'courseUnit.give',
    seen: await studio.revision(benCourse),
    course: benCourse,
    courseUnit: id('course-unit', 'duo'),
    unit: unit.id,
    strand: strandMain,
  });
  const lessonAt = async (at: number) => present((await studio.lessons(benCourse))[at], 'a lesson');
  const away = async (at: number, ...absent: Id<'student'>[]) =>
    studio.done({ type: 'lesson.absent', lesson: (await lessonAt(at)).id, absent });
  const shown = async () =>
    present(await studio.store.read((r) => viewCourse(r, benCourse, studio.outside())), 'the course');
  const bars = async () => (await shown()).bars.flatMap((b) => (b.kind === 'lesson' ? [b] : []));
  const noteLevel = async (at: number, student: Id<'student'> | null, name = 'o') =>
    ({
      type: 'observe',
      observation: id('observation', name),
      course: benCourse,
      student,
      lesson: (await lessonAt(at)).id,
      skill: beat,
      level: 3,
      note: '',
    }) as const;
  const teach = async (at: number) => {
    const lesson = await lessonAt(at);
    const [work] = (await studio.segments(lesson.id)).filter((s) => s.kind === 'work');
    await studio.done({
      type: 'segment.log',
      segment: present(work, 'work').id,
      seconds: 900,
      outcome: 'finished',
      share: null,
    });
    return studio.done({ type: 'lesson.close', lesson: lesson.id, minutes: null });
  };
  return { studio, lessonAt, away, shown, bars, noteLevel, teach };
}

describe('a member of a group who was not there', () => {
  test('is named in the lesson, the course, the day, and the lesson after it', async () => {
    const { studio, lessonAt, away, bars, teach } = await openGroup();
    const { label } = await away(0, ben);
    expect(label).toBe('Noted that Ben was not there on 7 September');
    await teach(0);
    expect((await bars()).map((b) => b.absent).slice(0, 2)).toEqual([[{ student: ben, name: 'Ben' }], []]);
    const [first, second] = [await lessonAt(0), await lessonAt(1)];
    const lesson = await studio.store.read((r) => viewLesson(r, first.id));
    expect(lesson?.absent).toEqual([{ student: ben, name: 'Ben' }]);
    const next = await studio.store.read((r) => viewLesson(r, second.id));
    expect(next?.previous?.absent).toEqual([{ student: ben, name: 'Ben' }]);
    const { lessons } = await studio.store.read((r) => viewDay(r, day('2026-09-14'), studio.outside()));
    expect(lessons.find((l) => l.course === benCourse)?.lastAbsent).toEqual([{ student: ben, name: 'Ben' }]);
  });

  test('leaves the others’ course as it goes on, and the own pace unknown', async () => {
    const with_ = await openGroup();
    await with_.teach(0);
    const without = await openGroup();
    await without.away(0, ben);
    await without.teach(0);
    const planOf = async ({ bars }: typeof with_) =>
      (await bars()).map((b) => b.segments.map((s) => `${s.title} ${s.minutes} ${s.outcome}`));
    expect(await planOf(without)).toEqual(await planOf(with_));
    const { students } = await without.studio.store.read((r) => viewStudents(r, without.studio.outside()));
    expect(students.map((s) => s.pacePercent)).toEqual([null, null]);
  });

  test('gets no level in it; one noted before has to be taken back first', async () => {
    const { studio, lessonAt, away, noteLevel } = await openGroup();
    await away(0, ben);
    const refused = await studio.refused(await noteLevel(0, ben));
    expect(refused.message).toMatch(/^Ben was not there on 7 September: nothing is recorded/);
    // The group’s own level and Ana’s are noted as ever.
    await studio.done(await noteLevel(0, null, 'both'));
    await studio.done(await noteLevel(0, ana, 'ana'));
    const { id: lesson } = await lessonAt(0);
    const { message } = await studio.refused({ type: 'lesson.absent', lesson, absent: [ana] });
    expect(message).toMatch(/^A level was noted for Ana in the lesson of 7/);
  });

  test('comes back with Undo, before the closing and after it', async () => {
    const { studio, lessonAt, away, teach } = await openGroup();
    const before = await lessonAt(0);
    const { change } = await away(0, ben);
    await studio.done({ type: 'undo', change });
    expect(await lessonAt(0)).toEqual(before);
    await teach(0);
    const later = await away(0, ben);
    expect((await lessonAt(0)).absent).toEqual([ben]);
    await studio.done({ type: 'undo', change: later.change });
    expect((await lessonAt(0)).absent).toBeNull();
    // Nobody ticked says that all were there.
    await away(0, ben);
    expect((await away(0)).label).toBe('Noted that all of The duo were there on 7 September');
    expect((await lessonAt(0)).absent).toBeNull();
  });

  test('known beforehand, keeps the lesson when its time in the week goes', async () => {
    const { studio, lessonAt, away } = await openGroup();
    const lesson = await lessonAt(2);
    await away(2, ana);
    const seen = await studio.revision(benCourse);
    await studio.done({ type: 'slot.remove', seen, course: benCourse, slot: id('slot', 'duo') });
    expect(await studio.lessons(benCourse)).toMatchObject([{ id: lesson.id, absent: [ana] }]);
  });

  test('goes with the studio’s file, and stays when the group changes', async () => {
    const { studio, lessonAt, away, bars } = await openGroup();
    await away(0, ben);
    await studio.done({ type: 'group.put', seen: 1, group: { ...group, members: [ana] } });
    expect((await bars())[0]?.absent).toEqual([{ student: ben, name: 'Ben' }]);
    const dump = await studio.store.dump();
    const other = await createMemoryStore(createFixedClock(day('2026-09-07'), time('08:00')));
    await other.load(dump);
    const { id: first } = await lessonAt(0);
    expect(await other.read(async (r) => (await r.get('lesson', first))?.absent)).toEqual([ben]);
    // Removed for good, nobody is named any more.
    await studio.done({ type: 'student.remove', seen: 1, student: ben });
    expect((await lessonAt(0)).absent).toBeNull();
  });

  test('is one of a group, and never all of it', async () => {
    const { studio, lessonAt } = await openGroup();
    const lesson = (await lessonAt(0)).id;
    const refusal = async (absent: Id<'student'>[], of = lesson) =>
      (await studio.refused({ type: 'lesson.absent', lesson: of, absent })).message;
    expect(await refusal([ana, ben])).toMatch(/^Nobody of The duo was there\. Mark the lesson/);
    await studio.done({ type: 'student.add', student: newStudent(cleo, 'Cleo', 2015) });
    expect(await refusal([cleo])).toMatch(/student on this course/);
    const [own] = await studio.lessons(id('course', 'ana'));
    expect(await refusal([ana], present(own, 'a lesson').id)).toMatch(/^Ana has lessons alone\./);
    await studio.done({ type: 'lesson.cancel', lesson, reason: '' });
    expect(await refusal([ben])).toMatch(/marked as cancelled\. Restore it/);
  });
});
