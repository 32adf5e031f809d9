// What to say of each segment when a lesson is closed, proposed from what was recorded, the clock and the levels. The
// teacher's own record always stands; the rest is a proposal that can be changed. The thresholds are common practice,
// no source.

import type { LessonSegmentView, LessonView, OutcomeView } from '#contract';
import { isRunOn } from './lesson-clock.ts';

export type ProposalReason =
  | 'recorded'
  | 'byHand'
  | 'asPlanned'
  | 'levelReached'
  | 'levelBelow'
  | 'clockFull'
  | 'clockPart'
  | 'notStarted'
  | 'ranOn';

export interface Proposal {
  readonly segment: LessonSegmentView['id'];
  readonly outcome: OutcomeView;
  /** Share of the chunk reached, 0..1, when partly; null otherwise or to let the clock say. */
  readonly share: number | null;
  /** Whole minutes it took. */
  readonly minutes: number;
  /** Where the minutes come from. Planned ones are only shown: nothing was measured, so nothing is learnt of pace. */
  readonly timed: 'clock' | 'planned' | 'hand';
  readonly because: ProposalReason;
}

/** From this share of the planned minutes on, a chunk counts as done in full. */
const fullFrom = 0.8;

/** A clock that ran less was only passed by on the way to another segment, or to closing. */
const leastSeconds = 30;
const hasRun = ({ seconds }: Pick<LessonSegmentView, 'seconds'>): boolean => (seconds ?? 0) >= leastSeconds;

/** Whether a segment is something to be learnt, so that stopping short of it can be carried on or set aside. */
export const isLearning = (segment: Pick<LessonSegmentView, 'kind'>): boolean =>
  segment.kind === 'work' || segment.kind === 'extension';

/** The nearest of a quarter, a half and three quarters. `nearestQuarter(0.4)` → 0.5 */
export function nearestQuarter(share: number): number {
  return Math.min(3, Math.max(1, Math.round(share * 4))) / 4;
}

/** Whether every level wanted in a segment was recorded in this lesson and reached; null when none was recorded. */
export function levelsReached(segment: Pick<LessonSegmentView, 'skills'>): boolean | null {
  const recorded = segment.skills.filter((s) => s.here !== null);
  if (recorded.length === 0) return null;
  if (recorded.some((s) => s.here !== null && s.here.level < s.wanted)) return false;
  return recorded.length === segment.skills.length ? true : null;
}

/** A proposal for each segment of a lesson, in the lesson's order; `shareById` is what was said by hand of a part. */
export function proposeClose(
  lesson: Pick<LessonView, 'segments' | 'minutes'>,
  shareById: ReadonlyMap<string, number> = new Map(),
): readonly Proposal[] {
  const clocked = lesson.segments.some((s) => (s.seconds ?? 0) > 0);
  return lesson.segments.map((segment) =>
    proposeOne(segment, lesson.minutes, clocked, shareById.get(segment.id) ?? null),
  );
}

function proposeOne(
  segment: LessonSegmentView,
  lessonMinutes: number,
  clocked: boolean,
  said: number | null,
): Proposal {
  const seconds = segment.seconds ?? 0;
  const ranOn = isRunOn(seconds, segment.minutes, lessonMinutes);
  const share = seconds / (segment.minutes * 60);
  const byClock = {
    minutes: ranOn ? segment.minutes : Math.round(seconds / 60),
    timed: ranOn ? ('hand' as const) : ('clock' as const),
  };
  const asPlanned = { minutes: segment.minutes, timed: 'planned' as const };
  const propose = (
    outcome: OutcomeView,
    because: ProposalReason,
    part: number | null = null,
    took: Pick<Proposal, 'minutes' | 'timed'> = byClock,
  ): Proposal => ({ segment: segment.id, outcome, share: part, ...took, because });
  /** A chunk with more of its activity to come is carried on when it was done in full; the last one is finished. */
  const done = (because: ProposalReason, took?: Pick<Proposal, 'minutes' | 'timed'>): Proposal =>
    isLearning(segment) && !segment.completes
      ? propose('partly', because, 1, took)
      : propose('finished', because, null, took);

  if (segment.outcome !== null) {
    const partly = segment.outcome === 'partly';
    const unclocked = !hasRun(segment) && segment.outcome !== 'skipped';
    const guess = {
      minutes: Math.round(segment.minutes * (partly ? (said ?? 0.5) : 1)),
      timed: 'planned' as const,
    };
    return propose(segment.outcome, 'recorded', partly ? said : null, unclocked ? guess : byClock);
  }
  const reached = levelsReached(segment);
  if (!hasRun(segment)) {
    if (!clocked) return done('asPlanned', asPlanned);
    if (reached !== null) return done('levelReached', asPlanned);
    return propose('skipped', 'notStarted');
  }
  if (!isLearning(segment)) return propose('finished', ranOn ? 'ranOn' : 'clockFull');
  if (reached === true && segment.completes) return propose('finished', ranOn ? 'ranOn' : 'levelReached');
  if (reached === false && segment.completes && share >= fullFrom)
    return propose('partly', 'levelBelow', 0.75);
  if (share >= fullFrom) return done(ranOn ? 'ranOn' : 'clockFull');
  return propose('partly', 'clockPart', nearestQuarter(share));
}

/** The sum of what the segments took, in minutes. */
export function minutesTaken(proposals: readonly Pick<Proposal, 'minutes'>[]): number {
  return proposals.reduce((sum, p) => sum + p.minutes, 0);
}
