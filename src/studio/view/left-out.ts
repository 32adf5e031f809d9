// What the plan as it stands leaves undone, read from the segments on record rather than by planning again, so that the
// list and the score never disagree.

import type { PlainDate } from '#core';
import { type Formulation, formatLeftOut, type LeftOut } from '#planning';
import { type CourseRecords, isSettled, segmentsOf } from '../course/course-records.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { CourseUnitId } from '../record/records.ts';

export interface LeftOutRow {
  readonly courseUnit: CourseUnitId;
  readonly activity: string;
  readonly title: string;
  readonly why: string;
}

/** Core activities that no coming lesson completes, in teaching order. */
export function listLeftOut(
  records: CourseRecords,
  formulation: Formulation,
  today: PlainDate,
): readonly LeftOutRow[] {
  const minutesById = new Map<string, number>();
  const completed = new Set<string>();
  for (const lesson of records.lessons) {
    if (lesson.status !== 'planned' || isSettled(records, lesson, today)) continue;
    for (const segment of segmentsOf(records, lesson.id)) {
      const work = workOf(segment);
      if (work === null) continue;
      const id = keyOf(work);
      minutesById.set(id, (minutesById.get(id) ?? 0) + segment.minutes);
      if (segment.completes) completed.add(id);
    }
  }
  const known = new Map(formulation.leftOut.map((l) => [keyOf(l), l]));
  const undone = new Map<string, string>();
  const rows: LeftOutRow[] = [];
  for (const { id, courseUnit, activity, kind } of formulation.order.sequence) {
    const key = keyOf({ courseUnit, activity: activity.key });
    const open = formulation.openById.get(id);
    const given = known.get(key);
    if (given === undefined && (open === undefined || kind === 'ext' || completed.has(key))) continue;
    const planned = minutesById.get(key) ?? 0;
    const blocker = (formulation.order.predsById.get(id) ?? []).find((p) => undone.has(p));
    const left: LeftOut = given ?? {
      courseUnit,
      activity: activity.key,
      title: activity.title,
      minutes: Math.max(1, (open?.remaining.demand ?? 0) - planned),
      why:
        blocker !== undefined && planned === 0
          ? { kind: 'afterLeftOut', title: undone.get(blocker) ?? '' }
          : open !== undefined && open.lastDay !== null
            ? { kind: 'noRoomBefore', date: open.lastDay }
            : { kind: 'noRoom' },
    };
    undone.set(id, activity.title);
    rows.push({
      // Planning hands back the ids that it was given.
      courseUnit: courseUnit as CourseUnitId,
      activity: activity.key,
      title: activity.title,
      why: formatLeftOut(left),
    });
  }
  return rows;
}

const keyOf = (work: { readonly courseUnit: string; readonly activity: string }) =>
  `${work.courseUnit} ${work.activity}`;
