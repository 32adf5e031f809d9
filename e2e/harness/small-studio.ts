// A small studio set up past the screens, for journeys whose story begins later: one student, one course, two starter units.

import type { Page } from 'playwright-core';
import { addDays, createId, type Id, type PlainTime, weekdayOf } from '#core';
import type { UnitId } from '#planning';
import { readCourseOf, readStudio, sendCommand } from './api.ts';

const random = { next: Math.random };

export interface SmallStudio {
  readonly name: string;
  readonly student: Id<'student'>;
  readonly course: Id<'course'>;
}

/** Founds the studio of the page and lays a course on a weekly lesson of 30 minutes, today first. */
export async function foundSmallStudio(page: Page): Promise<SmallStudio> {
  await sendCommand(page, {
    type: 'studio.found',
    name: 'Small Studio',
    teacher: 'Mara Lindqvist',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    locale: 'en-GB',
    starterUnits: true,
  });
  const { today } = await readStudio(page);
  const [student, course] = [createId('student', random), createId('course', random)];
  const strand = (name: string, ink: 0 | 1) => ({
    id: createId('strand', random),
    name,
    ink,
    priority: 1,
    deadline: null,
  });
  const strands = [strand('Technique', 0), strand('Rhythm', 1)];
  const name = 'Nora Quell';
  const plays = { instrument: 'clarinet_bb', stage: 'beginner' } as const;
  await sendCommand(page, {
    type: 'term.put',
    term: { id: createId('term', random), name: 'Winter', starts: today, ends: addDays(today, 98) },
  });
  await sendCommand(page, {
    type: 'student.add',
    student: {
      id: student,
      name,
      born: null,
      birthYear: Number(today.slice(0, 4)) - 9,
      instruments: [plays],
      family: null,
      contacts: [],
      note: '',
      since: today,
    },
  });
  await sendCommand(page, {
    type: 'course.open',
    course: { id: course, student, group: null, ...plays, strands },
    slot: {
      id: createId('slot', random),
      weekday: weekdayOf(today),
      time: '15:00' as PlainTime,
      minutes: 30,
      starts: today,
      ends: null,
    },
  });
  const units = ['five-good-notes', 'the-beat-in-your-feet'].map((name) => `unit:${name}` as UnitId);
  for (const [at, unit] of units.entries()) {
    const { revision } = await readCourseOf(page, name);
    const { id } = strands[at] ?? strand('', 0);
    await sendCommand(page, {
      type: 'courseUnit.give',
      seen: revision,
      course,
      courseUnit: createId('course-unit', random),
      unit,
      strand: id,
    });
  }
  return { name, student, course };
}
