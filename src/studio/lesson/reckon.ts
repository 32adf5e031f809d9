// What a logged segment was worth, in usual minutes: the currency in which planning counts what is left of an activity.
// Rules R-COVERED-1 to 5 of RULES.md.

import {
  type Activity,
  type Area,
  applyVariant,
  defaultPacePrior,
  learnPace,
  type PaceObservation,
} from '#planning';
import { ageOfLearner, type CourseRecords } from '../course/course-records.ts';
import type { SegmentRecord } from '../record/records.ts';
import { workOf } from './work-segment.ts';

/** What reckoning looks at in a segment. */
export type ReckonedSegment = Pick<
  SegmentRecord,
  'minutes' | 'completes' | 'seconds' | 'outcome' | 'reasons'
>;

export interface ReckonInput {
  readonly segment: ReckonedSegment;
  /** Usual minutes left of the activity when the segment began. */
  readonly left: number;
  /** Clock minutes this student takes for each usual minute. */
  readonly pace: number;
  /** Share of the chunk that was reached, 0..1; null to reckon it from the clock. */
  readonly share: number | null;
}

/**
 * Usual minutes covered. Finished: all that was left, but no more than its own minutes when it was only the short check
 * of something known already (which would look like great speed). Partly or set aside: the share of the chunk, else
 * what the clock is worth at this pace, else half the chunk. Skipped or nothing said: none.
 */
export function reckonCovered({ segment, left, pace, share }: ReckonInput): number {
  const chunk = usualMinutesOfChunk(segment, left, pace);
  if (segment.outcome === 'finished')
    return segment.reasons.some((r) => r.kind === 'knownAlready')
      ? tidy(Math.min(chunk, segment.minutes / pace))
      : left;
  if (segment.outcome !== 'partly' && segment.outcome !== 'setAside') return 0;
  if (share !== null) return tidy(share * chunk);
  if (segment.seconds !== null) return tidy(Math.min(chunk, segment.seconds / 60 / pace));
  return tidy(chunk / 2);
}

/** Usual minutes of a chunk: all that is left when it completes the activity; past the usual minutes, its own. */
function usualMinutesOfChunk(segment: ReckonedSegment, left: number, pace: number): number {
  const own = segment.minutes / pace;
  if (left <= 0) return own;
  return segment.completes ? left : Math.min(left, own);
}

/** The clock must have run for this share of the chunk before an unmarked last chunk counts as finished. */
const nearlyAll = 0.9;

/** What a segment comes to at closing when the teacher said nothing: the clock speaks, else it was not reached. */
export function outcomeByClock(
  segment: ReckonedSegment,
  left: number,
  pace: number,
): 'finished' | 'partly' | 'skipped' {
  if (segment.seconds === null || segment.seconds <= 0) return 'skipped';
  const chunk = usualMinutesOfChunk(segment, left, pace);
  const covered = segment.seconds / 60 / pace;
  return segment.completes && covered >= nearlyAll * chunk ? 'finished' : 'partly';
}

/**
 * Usual minutes left of an activity after the work given, for this student's stage and age; null when the course has no
 * such activity any more.
 */
export function usualMinutesLeft(
  records: CourseRecords,
  work: WorkKey,
  done: readonly (WorkKey & { readonly covered: number })[],
): number | null {
  const found = findActivity(records, work);
  if (found === null) return null;
  const covered = done
    .filter((w) => w.courseUnit === work.courseUnit && w.activity === work.activity)
    .reduce((sum, w) => sum + w.covered, 0);
  return Math.max(0, tidy(found.activity.minutes.usual - covered));
}

/** Clock minutes the student takes for each usual minute, learnt from the work logged so far with a clock. */
export function expectedPace(records: CourseRecords): number {
  const log: PaceObservation[] = [];
  for (const lesson of records.lessons) {
    if (lesson.status !== 'taught') continue;
    for (const segment of records.segmentsByLesson.get(lesson.id) ?? []) {
      const work = workOf(segment);
      const found = work === null ? null : findActivity(records, work);
      if (found === null) continue;
      log.push({
        area: found.area,
        actual: (segment.seconds ?? 0) / 60,
        covered: segment.covered ?? 0,
        usual: found.activity.minutes.usual,
      });
    }
  }
  return Math.exp(learnPace(log, defaultPacePrior).mean);
}

interface WorkKey {
  readonly courseUnit: string;
  readonly activity: string;
}

/** An activity as this student meets it, or null when the course has none of this key. */
export function findActivity(
  records: CourseRecords,
  work: WorkKey,
): { readonly area: Area; readonly activity: Activity } | null {
  const unit = records.units.find((u) => u.id === work.courseUnit);
  if (unit === undefined) return null;
  const found = [...unit.document.activities, ...unit.document.extensions].find(
    (a) => a.key === work.activity,
  );
  if (found === undefined) return null;
  // The student's age now decides the variant for work done and to come alike, so that both count in one currency.
  const day = records.lessons.find((l) => l.status === 'planned')?.date ?? records.lessons.at(-1)?.date;
  const age = day === undefined ? null : ageOfLearner(records.learner.students, day);
  return {
    area: unit.document.area,
    activity: applyVariant(found, { stage: records.course.stage, age }),
  };
}

/** Rounded to a thousandth of a minute, so that sums of chunks meet their whole. */
const tidy = (minutes: number) => Math.round(minutes * 1000) / 1000;
