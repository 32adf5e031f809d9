// What each logged segment of a course covered, counted from the first lesson on: "finished" means all that was left at
// that point, so a correction in one lesson changes what later ones came to.

import type { CourseRecords } from '../course/course-records.ts';
import type { LessonId, SegmentId, SegmentRecord } from '../record/records.ts';
import { outcomeByLevel } from './outcome-by-level.ts';
import { expectedPace, findActivity, outcomeByClock, reckonCovered, usualMinutesLeft } from './reckon.ts';
import { workOf } from './work-segment.ts';

export interface RecountOptions {
  /** The lesson being closed: its unmarked segments get the outcome that the clock speaks for. */
  readonly closing: LessonId | null;
  /** A share just given for one segment. */
  readonly share: { readonly segment: SegmentId; readonly share: number | null } | null;
}

/**
 * The segments whose outcome or covered minutes change. Only taught lessons count, and the one being closed. A partly
 * done segment keeps its covered minutes, because the share that was given is in them.
 */
export function recountWork(records: CourseRecords, options: RecountOptions): readonly SegmentRecord[] {
  const pace = expectedPace(records);
  const done: { courseUnit: string; activity: string; covered: number }[] = [];
  const changed: SegmentRecord[] = [];
  for (const lesson of records.lessons) {
    const closing = lesson.id === options.closing;
    if (lesson.status !== 'taught' && !closing) continue;
    for (const segment of records.segmentsByLesson.get(lesson.id) ?? []) {
      const next = recount(segment, lesson.id, closing);
      if (next.outcome !== segment.outcome || next.covered !== segment.covered) changed.push(next);
      const work = workOf(next);
      if (work !== null) done.push({ ...work, covered: next.covered ?? 0 });
    }
  }
  return changed;

  function recount(segment: SegmentRecord, lesson: LessonId, closing: boolean): SegmentRecord {
    const work = workOf(segment);
    const left = work === null ? null : usualMinutesLeft(records, work, done);
    if (left === null) {
      // No work of a unit: a revisit or the frame of the lesson. It was done or it was not.
      if (!closing || segment.outcome !== null) return segment;
      return { ...segment, outcome: (segment.seconds ?? 0) > 0 ? 'finished' : null };
    }
    const develops = work === null ? [] : (findActivity(records, work)?.activity.develops ?? []);
    const outcome =
      segment.outcome ??
      (closing ? (outcomeByLevel(records, lesson, develops) ?? outcomeByClock(segment, left, pace)) : null);
    if (outcome === null) return { ...segment, covered: null };
    const isShared = options.share?.segment === segment.id;
    const keepsCovered =
      segment.outcome === outcome &&
      segment.covered !== null &&
      !isShared &&
      (outcome === 'partly' || outcome === 'setAside');
    const covered = keepsCovered
      ? (segment.covered ?? 0)
      : reckonCovered({
          segment: { ...segment, outcome },
          left,
          pace,
          share: isShared ? (options.share?.share ?? null) : null,
        });
    return { ...segment, outcome, covered };
  }
}
