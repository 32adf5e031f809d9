// A small studio set up past the screens, for journeys whose story begins later: one student, one course, two starter units.

import type { Page } from 'playwright-core';
import { type Id, present } from '#core';
import type { UnitId } from '#planning';
import { foundStudio } from './found-studio.ts';
import { giveUnit, openCourse } from './open-course.ts';

export interface SmallStudio {
  readonly name: string;
  readonly student: Id<'student'>;
  readonly course: Id<'course'>;
}

/** Founds the studio of the page and lays a course on a weekly lesson of 30 minutes, today first. */
export async function foundSmallStudio(page: Page): Promise<SmallStudio> {
  const today = await foundStudio(page, 'Small Studio');
  const name = 'Nora Quell';
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
