import { expect, test } from 'vitest';
import { type CourseRow, type StudentRow, type StudentsView, sendSchema, type UnitRow } from '#contract';
import { createId, createSeededRandom, type Id, type PlainDate, type PlainTime } from '#core';
import { findWaiting, isPressing, type Waiting } from '../../components/find-waiting.ts';
import {
  type FirstLesson,
  findClash,
  findFirstLessonFaults,
  firstLessonToCommands,
  isFitting,
  lessonToStand,
  newFirstLesson,
  nextFree,
  type Stand,
} from './first-lessons-draft.ts';

const today = '2026-11-25' as PlainDate;
const random = createSeededRandom(5);
const mint = <P extends string>(prefix: P) => createId(prefix, random);

const ida: StudentRow = {
  id: 'student:ida' as Id<'student'>,
  name: 'Ida',
  siblings: [],
  age: 9,
  instruments: [{ instrument: 'flute', name: 'Flute', stage: 'elementary' }],
  courses: [],
  next: null,
  left: null,
  here: true,
  pacePercent: null,
};
const course = (id: string, more: Partial<CourseRow>): CourseRow => ({
  id: `course:${id}` as Id<'course'>,
  learner: 'Ida',
  student: ida.id,
  instrument: 'flute',
  instrumentName: 'Flute',
  stage: 'elementary',
  revision: 4,
  strands: [
    { id: 'strand:one' as Id<'strand'>, name: 'Technique' },
    { id: 'strand:two' as Id<'strand'>, name: 'Ear' },
  ],
  weekly: true,
  units: 1,
  sheets: [],
  ...more,
});
const view = (students: readonly StudentRow[], courses: readonly CourseRow[]): StudentsView => ({
  students,
  groups: [],
  courses,
});
const ear: UnitRow = {
  id: 'unit:ear' as UnitRow['id'],
  version: 1,
  title: 'Hear it first',
  area: 'ear',
  goal: '',
  stages: ['beginner', 'elementary'],
  ages: { from: 7, to: 12 },
  usualMinutes: 60,
  activities: 3,
  usedBy: 0,
  retired: false,
};
const onMonday: FirstLesson = {
  instrument: 'flute',
  stage: 'elementary',
  weekday: '1',
  time: '15:30',
  minutes: '30',
  unit: ear.id,
};
const noCourse: Waiting = {
  key: ida.id,
  name: 'Ida',
  age: 9,
  student: ida,
  course: null,
  wantsTime: true,
  wantsUnit: true,
};

test('who has no course, no unit or no lesson waits; who leaves, or had a course that ended, does not', () => {
  expect(findWaiting(view([ida], []))).toEqual([noCourse]);
  expect(findWaiting(view([{ ...ida, left: today }], []))).toEqual([]);
  expect(findWaiting(view([{ ...ida, here: false }], []))).toEqual([]);
  expect(findWaiting(view([{ ...ida, courses: ['course:over' as Id<'course'>] }], []))).toEqual([]);
  const member = { ...ida, courses: ['course:x' as Id<'course'>] };
  const wants = (more: Partial<CourseRow>) =>
    findWaiting(view([member], [course('x', more)])).map((one) => [
      one.wantsTime,
      one.wantsUnit,
      isPressing(one),
    ]);
  expect(wants({})).toEqual([]);
  expect(wants({ units: 0 })).toEqual([[false, true, true]]);
  expect(wants({ weekly: false })).toEqual([[true, false, false]]);
  expect(wants({ weekly: false, units: 0 })).toEqual([[true, true, true]]);
  // Single lessons are lessons: no weekly time is wanted then.
  expect(wants({ weekly: false, sheets: [{ lesson: 'lesson:a' as Id<'lesson'>, date: today }] })).toEqual([]);
  const group = course('g', { student: null, learner: 'Monday trio', units: 0 });
  expect(findWaiting(view([], [group])).map((one) => one.name)).toEqual(['Monday trio']);
});

test('a row begins with what the student plays, and asks for nothing', () => {
  const row = newFirstLesson(noCourse);
  expect(row).toMatchObject({ instrument: 'flute', stage: 'elementary', weekday: '', unit: '' });
  expect(findFirstLessonFaults(row)).toEqual({});
  expect(firstLessonToCommands(noCourse, row, [ear], today, mint)).toEqual([]);
});

test('a begun row says what it lacks', () => {
  expect(Object.keys(findFirstLessonFaults({ ...onMonday, time: '' }))).toEqual(['time']);
  expect(Object.keys(findFirstLessonFaults({ ...onMonday, minutes: '5' }))).toEqual(['minutes']);
  expect(Object.keys(findFirstLessonFaults({ ...onMonday, instrument: '' }))).toEqual(['instrument']);
  expect(findFirstLessonFaults({ ...onMonday, weekday: 'open', time: '', minutes: '' })).toEqual({});
});

test('a row becomes commands that the contract takes: a course with its time, and the unit on its strand', () => {
  const commands = firstLessonToCommands(noCourse, onMonday, [ear], today, mint);
  for (const command of commands)
    expect(sendSchema.safeParse({ id: mint('change'), command }).error).toBeUndefined();
  const [open, give] = commands;
  expect(open).toMatchObject({
    type: 'course.open',
    course: { student: ida.id, instrument: 'flute', stage: 'elementary' },
    slot: { weekday: 1, time: '15:30', minutes: 30, starts: today },
  });
  const opened = open?.type === 'course.open' ? open.course : null;
  expect(give).toMatchObject({ type: 'courseUnit.give', course: opened?.id, unit: ear.id });
  expect(opened?.strands.map((s) => s.id)).toContain(give?.type === 'courseUnit.give' && give.strand);
  const open2 = firstLessonToCommands(
    noCourse,
    { ...onMonday, weekday: 'open', unit: '' },
    [ear],
    today,
    mint,
  );
  expect(open2).toMatchObject([{ type: 'course.open', slot: null }]);
});

test('a course that is there gets what it lacks, the unit on the strand of its area', () => {
  const waiting = { ...noCourse, course: course('x', { weekly: false, units: 0 }) };
  const commands = firstLessonToCommands(waiting, onMonday, [ear], today, mint);
  for (const command of commands)
    expect(sendSchema.safeParse({ id: mint('change'), command }).error).toBeUndefined();
  expect(commands).toMatchObject([
    { type: 'slot.put', seen: 4, course: 'course:x', slot: { weekday: 1, time: '15:30', minutes: 30 } },
    { type: 'courseUnit.give', seen: 4, course: 'course:x', strand: 'strand:two' },
  ]);
});

test('a day goes on where its last lesson ends, and what overlaps is named', () => {
  const stand = (name: string, weekday: string, time: string, minutes: number): Stand => ({
    name,
    who: [],
    weekday,
    time: time as PlainTime,
    minutes,
  });
  const week = [
    stand('Ben', '1', '15:00', 30),
    stand('Cleo', '1', '14:00', 45),
    stand('Dag', '2', '18:00', 60),
  ];
  expect(nextFree('1', week)).toBe('15:30');
  expect(nextFree('3', week)).toBe('');
  expect(nextFree('2', [stand('Eva', '2', '23:30', 45)])).toBe('');
  const own = lessonToStand(noCourse, { ...onMonday, time: '15:15' });
  expect(own && findClash(own, week)?.name).toBe('Ben');
  const after = lessonToStand(noCourse, onMonday);
  expect(after && findClash(after, week)).toBeNull();
  expect(lessonToStand(noCourse, { ...onMonday, weekday: 'open' })).toBeNull();
});

test('a unit fits by stage and age; an unknown age leaves it to the stage', () => {
  expect(isFitting(ear, 'elementary', 9)).toBe(true);
  expect(isFitting(ear, 'elementary', 60)).toBe(false);
  expect(isFitting(ear, 'elementary', null)).toBe(true);
  expect(isFitting(ear, 'advanced', 9)).toBe(false);
});
