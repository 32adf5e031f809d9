import { describe, expect, test } from 'vitest';
import { type StudentView, sendSchema } from '#contract';
import { createId, createSeededRandom, type PlainDate } from '#core';
import {
  draftOfStudent,
  draftToCommands,
  findDraftFaults,
  mayBeMinor,
  newStudentDraft,
  type StudentDraft,
} from './student-draft.ts';

const today = '2026-11-25' as PlainDate;
const random = createSeededRandom(7);
const mint = <P extends string>(prefix: P) => createId(prefix, random);
const filled: StudentDraft = {
  ...newStudentDraft(today),
  name: ' Ida Sund ',
  birthYear: '2014',
  instruments: [{ instrument: 'flute', stage: 'elementary' }],
  contacts: [
    { name: '', relation: '', phone: '', email: ' ', shared: false },
    { name: 'Mo Sund', relation: 'father', phone: '0123', email: '', shared: false },
  ],
};
const filledCourse = { ...filled.course, weekday: '2', time: '16:30', minutes: '45' } as const;

test('a filled form becomes commands that the contract takes', () => {
  const commands = draftToCommands({ ...filled, course: filledCourse }, null, today, mint);
  expect(commands.map((c) => c.type)).toEqual(['student.add', 'course.open']);
  for (const command of commands) {
    const parsed = sendSchema.safeParse({ id: mint('change'), command });
    expect(parsed.error?.issues).toBeUndefined();
  }
  const [add, open] = commands;
  expect(add).toMatchObject({ student: { name: 'Ida Sund', birthYear: 2014, born: null, since: today } });
  expect(add?.type === 'student.add' && add.student.contacts).toHaveLength(1);
  expect(open).toMatchObject({
    course: { instrument: 'flute', stage: 'elementary' },
    slot: { weekday: 2, time: '16:30', minutes: 45, starts: today },
  });
});

test('without a weekday the course opens without a slot; unticked, it does not open', () => {
  const open = draftToCommands(filled, null, today, mint)[1];
  expect(open).toMatchObject({ type: 'course.open', slot: null });
  expect(
    draftToCommands({ ...filled, course: { ...filled.course, open: false } }, null, today, mint),
  ).toHaveLength(1);
});

test('a course opens for the instrument chosen, at its stage, and else for the first', () => {
  const two: StudentDraft = {
    ...filled,
    instruments: [
      { instrument: 'violin', stage: 'beginner' },
      { instrument: 'piano', stage: 'elementary' },
    ],
  };
  const forInstrument = (instrument: StudentDraft['course']['instrument']) =>
    draftToCommands({ ...two, course: { ...filledCourse, instrument } }, null, today, mint)[1];
  expect(forInstrument('')).toMatchObject({ course: { instrument: 'violin', stage: 'beginner' } });
  expect(forInstrument('piano')).toMatchObject({ course: { instrument: 'piano', stage: 'elementary' } });
  // Taken out of the form again after it was chosen.
  expect(forInstrument('cello')).toMatchObject({ course: { instrument: 'violin' } });
});

test('the form of a student proposes the instrument that has no course yet', () => {
  const known = (names: readonly string[]): StudentView => ({
    id: mint('student'),
    revision: 1,
    name: 'Ida Sund',
    born: null,
    birthYear: 2014,
    age: 12,
    instruments: [
      { instrument: 'violin', stage: 'beginner' },
      { instrument: 'piano', stage: 'elementary' },
    ],
    family: null,
    contacts: [],
    note: '',
    since: today,
    left: null,
    courses: names.map((instrumentName) => ({ id: mint('course'), instrumentName, group: null })),
  });
  expect(draftOfStudent(known([]), today).course.instrument).toBe('violin');
  expect(draftOfStudent(known(['Violin']), today).course.instrument).toBe('piano');
  expect(draftOfStudent(known(['Violin', 'Piano']), today).course.instrument).toBe('');
});

test('a full date of birth leaves the year out, so that the two cannot disagree', () => {
  const [add] = draftToCommands({ ...filled, born: '2014-05-06' }, null, today, mint);
  expect(add).toMatchObject({ student: { born: '2014-05-06', birthYear: null } });
});

describe('faults', () => {
  test('none in a filled form', () => expect(findDraftFaults(filled, today)).toEqual({}));
  test.each<[keyof ReturnType<typeof findDraftFaults>, Partial<StudentDraft>]>([
    ['name', { name: '  ' }],
    ['born', { born: '2027-01-01' }],
    ['birthYear', { birthYear: '14' }],
    ['course', { instruments: [{ instrument: '', stage: 'beginner' }] }],
    ['strands', { course: { ...filled.course, strands: [' '] } }],
    ['time', { course: { ...filledCourse, time: '' } }],
    ['minutes', { course: { ...filledCourse, minutes: '5' } }],
  ])('%s', (field, change) => {
    expect(Object.keys(findDraftFaults({ ...filled, ...change }, today))).toEqual([field]);
  });
});

test('under age until the form says otherwise', () => {
  expect(mayBeMinor({ born: '', birthYear: '' }, today)).toBe(true);
  expect(mayBeMinor({ born: '2008-11-25', birthYear: '' }, today)).toBe(false);
  expect(mayBeMinor({ born: '2008-11-26', birthYear: '' }, today)).toBe(true);
  expect(mayBeMinor({ born: '', birthYear: '2008' }, today)).toBe(true);
  expect(mayBeMinor({ born: '', birthYear: '2007' }, today)).toBe(false);
});
