// The studio itself: whose it is, and how much is in it.

import type { StudioView } from '#contract';
import type { Clock, PlainDate, PlainTime } from '#core';
import { defaultCourseSettings } from '#planning';
import { isHereOn } from '../course/course-records.ts';
import type { Reader } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';

/** What views take from outside. */
export interface ViewOutside {
  readonly clock: Clock;
}

/** The studio's own view; before it is founded, with `founded` false and the usual settings. */
export async function viewStudio(reader: Reader, { clock }: ViewOutside): Promise<StudioView> {
  const studio = await reader.get('studio', studioId);
  const today: PlainDate = clock.today();
  const now: PlainTime = clock.time();
  const students = await reader.list('student');
  const units = await reader.list('unit');
  const courses = await reader.list('course');
  return {
    founded: studio !== null,
    revision: studio?.revision ?? 0,
    name: studio?.name ?? '',
    teacher: studio?.teacher ?? '',
    timeZone: studio?.timeZone ?? 'UTC',
    locale: studio?.locale ?? 'en-GB',
    noteNames: studio?.noteNames ?? 'british',
    paper: studio?.paper ?? 'A4',
    defaults: studio?.defaults ?? defaultCourseSettings,
    demo: studio?.demo ?? false,
    today,
    now,
    counts: {
      students: students.filter((s) => isHereOn(s, today)).length,
      units: units.filter((u) => !u.retired).length,
      terms: (await reader.list('term')).length,
      courses: courses.filter((c) => c.ended === null || c.ended >= today).length,
    },
  };
}
