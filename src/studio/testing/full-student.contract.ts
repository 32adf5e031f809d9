// For tests of erasing: a studio in which one student has left a trace of every kind, beside others of whom nothing may be
// lost. The names are invented, and found nowhere else in the code.

import { ok, present } from '#core';
import type { Store } from '#studio';
import {
  ana,
  anaCourse,
  day,
  emptyTake,
  id,
  newCourse,
  newStudent,
  openStudio,
  otherUnit,
  slotOf,
  strandMain,
  type TestStudio,
  time,
  unit,
} from './open-studio.contract.ts';

export const zelda = id('student', 'zq-one');
export const zeldaCourse = id('course', 'zq-own');
export const duo = id('group', 'duo');
export const duoCourse = id('course', 'duo');
export const soloGroup = id('group', 'zq-solo');
export const fullName = 'Zelinda Quillfeather';
/** What is in no file of a studio once she is erased: parts of her name, of ids that are hers, of texts, and her sounds. */
export const traces = ['Zelinda', 'Quillfeather', 'zq-', 'Zezé', 'a mole on her wrist', 'U291bmRPZlpR'];
/** Base64 of "SoundOfZQ", many times. */
export const soundText = 'U291bmRPZlpR'.repeat(4000);

/** Fills the studio with her: every kind of row, and changes of every kind that touched her alone or among others. */
export async function openFullStudio(given: Store | null = null): Promise<TestStudio> {
  const studio = await openStudio(undefined, given);
  const { done } = studio;
  const student = (name: string) => ({
    ...newStudent(zelda, name, 2015),
    contacts: [{ name: 'Ida Quillfeather', relation: 'mother', phone: '555 0199', email: 'ida@example.org' }],
    note: 'Has a mole on her wrist; called Zezé at home.',
  });
  // First under another name, together with somebody who stays.
  await done({
    type: 'student.addMany',
    students: [student('Zezé Quillfeather-Old'), newStudent(id('student', 'tom'), 'Tom Reed', 2012)],
  });
  await done({ type: 'student.change', seen: 1, student: student(fullName) });
  await done({
    type: 'course.open',
    course: newCourse(zeldaCourse, zelda),
    slot: slotOf('zq-slot', '15:00'),
  });
  for (const [course, courseUnit] of [
    [zeldaCourse, 'zq-unit'],
    [anaCourse, 'ana-unit'],
  ] as const)
    await done({
      type: 'courseUnit.give',
      seen: await studio.revision(course),
      course,
      courseUnit: id('course-unit', courseUnit),
      unit: unit.id,
      strand: strandMain,
    });
  await done({
    type: 'event.put',
    seen: await studio.revision(zeldaCourse),
    course: zeldaCourse,
    event: { id: id('event', 'zq-recital'), date: day('2026-12-01'), title: `${fullName}’s recital` },
  });
  await done({
    type: 'consent.give',
    consent: {
      id: id('consent', 'zq-consent'),
      student: zelda,
      givenBy: 'Ida Quillfeather',
      relation: 'mother',
      on: day('2026-09-07'),
      note: '',
    },
  });
  // Families come with a file of another studio: no command makes one.
  await studio.store.change(
    { id: id('change', 'family'), at: '2026-09-07T08:00:00.000Z', type: 'x' },
    async (tx) => {
      const family = id('family', 'zq-family');
      await tx.put('family', { id: family, revision: 1, name: 'Quillfeather', contacts: [], note: '' });
      const one = present(await tx.get('student', zelda), 'her');
      await tx.put('student', { ...one, family });
      return ok({ label: 'The Quillfeather family', reply: null });
    },
  );
  await fillGroups(studio);
  await fillLesson(studio);
  await fillOthers(studio);
  return studio;
}

async function fillGroups(studio: TestStudio): Promise<void> {
  const { done } = studio;
  await done({ type: 'group.put', seen: 0, group: { id: duo, name: 'The duo', members: [ana, zelda] } });
  await done({
    type: 'group.put',
    seen: 0,
    group: { id: soloGroup, name: 'Zelinda alone', members: [zelda] },
  });
  await done({
    type: 'course.open',
    course: { ...newCourse(duoCourse, ana), student: null, group: duo },
    slot: slotOf('duo', '17:00'),
  });
  await done({
    type: 'course.open',
    course: { ...newCourse(id('course', 'zq-solo'), ana), student: null, group: soloGroup },
    slot: slotOf('zq-solo', '18:00'),
  });
  await done({
    type: 'courseUnit.give',
    seen: await studio.revision(duoCourse),
    course: duoCourse,
    courseUnit: id('course-unit', 'duo-unit'),
    unit: unit.id,
    strand: strandMain,
  });
  const [first, second] = await studio.lessons(duoCourse);
  const lesson = present(first, 'a lesson of the duo').id;
  const beat = id('skill', 'steady-beat');
  for (const [name, one] of [
    ['zq-duo-level', zelda],
    ['ana-duo-level', ana],
  ] as const)
    await done({
      type: 'observe',
      observation: id('observation', name),
      course: duoCourse,
      student: one,
      lesson,
      skill: beat,
      level: one === ana ? 3 : 1,
      note: '',
    });
  for (const [base, text] of [
    ['', 'Zelinda’s and Ana’s first'],
    ['Zelinda’s and Ana’s first', 'Zelinda’s and Ana’s first duet went well'],
  ] as const)
    await done({ type: 'lesson.write', lesson, field: 'note', base, text });
  await done({ type: 'lesson.absent', lesson: present(second, 'a second lesson').id, absent: [zelda] });
}

async function fillLesson(studio: TestStudio): Promise<void> {
  const { done } = studio;
  const [first, second] = await studio.lessons(zeldaCourse);
  const lesson = present(first, 'her first lesson').id;
  const work = present(
    (await studio.segments(lesson)).find((s) => s.kind === 'work'),
    'work',
  );
  await done({
    type: 'take.keep',
    take: { ...emptyTake(id('take', 'zq-take'), zelda), lesson, title: 'Zelinda plays' },
    sound: { id: id('sound', 'zq-sound'), type: 'audio/webm', data: soundText },
  });
  // Discarded: only the journal says whose the sound is.
  await done({
    type: 'take.keep',
    take: emptyTake(id('take', 'zq-discarded'), zelda),
    sound: { id: id('sound', 'zq-unheld'), type: 'audio/webm', data: soundText },
  });
  await done({ type: 'take.discard', take: id('take', 'zq-discarded') });
  await done({ type: 'segment.log', segment: work.id, seconds: 900, outcome: 'finished', share: null });
  await done({
    type: 'segment.write',
    segment: work.id,
    base: '',
    text: 'a mole on her wrist hurt; stop early',
  });
  await done({
    type: 'observe',
    observation: id('observation', 'zq-level'),
    course: zeldaCourse,
    student: zelda,
    lesson,
    skill: id('skill', 'steady-beat'),
    level: 3,
    note: 'Zelinda did it',
    take: id('take', 'zq-take'),
  });
  await done({
    type: 'material.keep',
    lesson,
    material: {
      id: id('material', 'zq-sheet'),
      title: 'For Zelinda',
      spec: { kind: 'rhythm', metre: '3/4' },
      seed: 3,
    },
  });
  await done({ type: 'lesson.write', lesson, field: 'practice', base: '', text: 'Zelinda: walk and clap' });
  await done({ type: 'lesson.close', lesson, minutes: null });
  await done({
    type: 'lesson.cancel',
    lesson: present(second, 'her second lesson').id,
    reason: 'Zelinda is ill',
  });
}

async function fillOthers(studio: TestStudio): Promise<void> {
  const { done } = studio;
  // A sibling, whose own contact has the family name too.
  const tom = id('student', 'tom');
  await done({
    type: 'student.change',
    seen: 1,
    student: {
      ...newStudent(tom, 'Tom Reed', 2012),
      note: `Shares lifts with ${fullName}.`,
      contacts: [{ name: 'Bea Reed', relation: 'mother', phone: '', email: '' }],
    },
  });
  // Her copy of the unit goes into the library, and the days off touch all courses at once.
  await done({
    type: 'courseUnit.change',
    seen: await studio.revision(zeldaCourse),
    courseUnit: id('course-unit', 'zq-unit'),
    document: { ...unit, about: 'As Zelinda likes it.' },
  });
  await done({
    type: 'courseUnit.takeIntoLibrary',
    seen: await studio.revision(zeldaCourse),
    courseUnit: id('course-unit', 'zq-unit'),
  });
  await done({
    type: 'holiday.putMany',
    holidays: [
      {
        id: id('holiday', 'fair'),
        name: 'Fair',
        starts: day('2026-11-09'),
        ends: day('2026-11-10'),
        source: '',
      },
    ],
  });
  await done({
    type: 'together',
    label: `A unit for ${fullName} and Ana`,
    commands: [
      {
        type: 'courseUnit.give',
        seen: await studio.revision(anaCourse),
        course: anaCourse,
        courseUnit: id('course-unit', 'ana-long'),
        unit: otherUnit.id,
        strand: strandMain,
      },
      {
        type: 'courseUnit.give',
        seen: await studio.revision(zeldaCourse),
        course: zeldaCourse,
        courseUnit: id('course-unit', 'zq-long'),
        unit: otherUnit.id,
        strand: strandMain,
      },
    ],
  });
  await done({
    type: 'lesson.add',
    seen: await studio.revision(zeldaCourse),
    course: zeldaCourse,
    lesson: { id: id('lesson', 'zq-extra'), date: day('2026-09-16'), time: time('10:00'), minutes: 30 },
  });
}

/** Erases her as the screen does. */
export const eraseZelda = async (studio: TestStudio, more: { readonly keep?: readonly string[] } = {}) => {
  const revision = (await studio.store.read((r) => r.get('student', zelda)))?.revision ?? 0;
  return studio.done({
    type: 'student.erase',
    seen: revision,
    student: zelda,
    name: fullName,
    called: ['Zezé'],
    keep: [...(more.keep ?? [])],
    copies: false,
  });
};
