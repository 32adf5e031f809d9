// A student, and one with a course on a weekly lesson, set up past the screens.

import type { Page } from 'playwright-core';
import type { CommandOf } from '#contract';
import { createId, type Id, type PlainDate, type PlainTime, weekdayOf } from '#core';
import type { InstrumentId } from '#music';
import type { Stage, UnitId } from '#planning';
import { readCourseOf, sendCommand } from './api.ts';

const random = { next: Math.random };

/** Adds a student, of whom nothing is known but what is given. */
export async function addStudent(
  page: Page,
  name: string,
  more: Partial<CommandOf<'student.add'>['student']> = {},
): Promise<Id<'student'>> {
  const id = createId('student', random);
  await sendCommand(page, {
    type: 'student.add',
    student: {
      id,
      name,
      born: null,
      birthYear: null,
      instruments: [],
      family: null,
      contacts: [],
      note: '',
      since: '2026-01-01' as PlainDate,
      ...more,
    },
  });
  return id;
}

export interface CourseWish {
  readonly name: string;
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  readonly age: number;
  /** The first lesson, of 30 minutes, and each of the same day of the week after it. */
  readonly from: PlainDate;
  readonly time: string;
  /** Names of the strands, at most four; each has its own ink. */
  readonly strands: readonly string[];
}

export interface OpenedCourse {
  readonly student: Id<'student'>;
  readonly course: Id<'course'>;
  readonly strands: readonly Id<'strand'>[];
}

/** Adds the student and opens the course. */
export async function openCourse(page: Page, wish: CourseWish): Promise<OpenedCourse> {
  const { name, instrument, stage, age, from, time } = wish;
  const course = createId('course', random);
  const strands = wish.strands.map((strand, at) => ({
    id: createId('strand', random),
    name: strand,
    ink: at as 0 | 1 | 2 | 3,
    priority: 1,
    deadline: null,
  }));
  const student = await addStudent(page, name, {
    birthYear: Number(from.slice(0, 4)) - age,
    instruments: [{ instrument, stage }],
    since: from,
  });
  await sendCommand(page, {
    type: 'course.open',
    course: { id: course, student, group: null, instrument, stage, strands },
    slot: {
      id: createId('slot', random),
      weekday: weekdayOf(from),
      time: time as PlainTime,
      minutes: 30,
      starts: from,
      ends: null,
    },
  });
  return { student, course, strands: strands.map(({ id }) => id) };
}

/** Gives a unit of the library to a course. */
export async function giveUnit(
  page: Page,
  name: string,
  course: Id<'course'>,
  unit: UnitId,
  strand: Id<'strand'>,
): Promise<void> {
  const { revision } = await readCourseOf(page, name);
  await sendCommand(page, {
    type: 'courseUnit.give',
    seen: revision,
    course,
    courseUnit: createId('course-unit', random),
    unit,
    strand,
  });
}
