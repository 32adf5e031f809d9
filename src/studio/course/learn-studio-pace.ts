// What all students of the studio together say about pace: where a new student's planning starts. It is learnt again at
// the first closing after a week, not at every one, or each closing would nudge everyone else's plan.

import { daysBetween, type PlainDate } from '#core';
import { type PaceObservation, studioPacePrior } from '#planning';
import { workOf } from '../lesson/work-segment.ts';
import type { StudioPace } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

const daysKept = 7;

/** The pace to keep from today on: the one that is there while it is fresh, else one from the whole log. */
export async function learnStudioPace(
  reader: Reader,
  known: StudioPace | null,
  today: PlainDate,
): Promise<StudioPace> {
  if (known !== null && daysBetween(known.asOf, today) < daysKept) return known;
  const units = new Map((await reader.list('courseUnit')).map((u) => [u.id, u.document]));
  const byCourse = new Map<string, PaceObservation[]>();
  for (const segment of await reader.list('segment')) {
    const work = workOf(segment);
    const document = segment.courseUnit === null ? undefined : units.get(segment.courseUnit);
    if (work === null || document === undefined || segment.seconds === null) continue;
    const activity = [...document.activities, ...document.extensions].find((a) => a.key === work.activity);
    if (activity === undefined || segment.covered === null) continue;
    const log = byCourse.get(segment.course) ?? [];
    log.push({
      area: document.area,
      actual: segment.seconds / 60,
      covered: segment.covered,
      usual: activity.minutes.usual,
    });
    byCourse.set(segment.course, log);
  }
  return { prior: studioPacePrior(byCourse), asOf: today };
}
