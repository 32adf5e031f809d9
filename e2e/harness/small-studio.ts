// A small studio set up past the screens, for journeys whose story begins later: one student, one course, two starter units.

import type { Page } from 'playwright-core';
import { addDays, createId, type Id, present } from '#core';
import type { UnitId } from '#planning';
import { readStudio, sendCommand } from './api.ts';
import { giveUnit, openCourse } from './open-course.ts';

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
  const name = 'Nora Quell';
  await sendCommand(page, {
    type: 'term.put',
    term: { id: createId('term', random), name: 'Winter', starts: today, ends: addDays(today, 98) },
  });
  const { student, course, strands } = await openCourse(page, {
    name,
    instrument: 'clarinet_bb',
    stage: 'beginner',
    age: 9,
    from: today,
    time: '15:00',
    strands: ['Technique', 'Rhythm'],
  });
  for (const [at, unit] of ['five-good-notes', 'the-beat-in-your-feet'].entries())
    await giveUnit(page, name, course, `unit:${unit}` as UnitId, present(strands[at], 'a strand for each'));
  return { name, student, course };
}
