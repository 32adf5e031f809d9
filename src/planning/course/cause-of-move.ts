// Why something moved. Causes are tried from the most direct to the least: the teacher's own hand, a lesson that is gone,
// what happened to this very activity, what it rests on, and only then the room that others took or left.

import type { CoursePlan, Move, PlannedSegment } from './course-plan.ts';
import type { Change, Comparison, PlacedSegment } from './plan-comparison.ts';

type Cause = Move['because'];

/** The cause of one change; `changes` are all changes of the same replan. */
export function causeOfMove(change: Change, changes: readonly Change[], comparison: Comparison): Cause {
  const segment = change.now?.segment ?? change.old?.segment;
  if (segment === undefined || isByHand(change, segment, comparison)) return { kind: 'byHand' };
  const { old } = change;
  if (old !== null && comparison.goneLessons.has(old.lesson)) return { kind: 'lessonGone', date: old.date };
  return segment.kind === 'revisit'
    ? causeOfRevisit(change, segment, changes, comparison)
    : (causeInItself(change, segment, comparison) ?? causeElsewhere(change, segment, changes));
}

function isByHand(
  { old, now }: Change,
  segment: PlannedSegment,
  { context: { byHand } }: Comparison,
): boolean {
  if (now?.segment.pinned || (old?.segment.pinned && now !== null)) return true;
  return byHand.some((touched) => {
    if ('lesson' in touched) return touched.lesson === old?.lesson || touched.lesson === now?.lesson;
    if ('skill' in touched) return touched.skill === segment.skill;
    return isSameActivity(touched, segment);
  });
}

type ActivityRef = { readonly courseUnit: string | null; readonly activity: string | null };

const isSameActivity = (a: ActivityRef, b: ActivityRef) =>
  a.activity !== null && a.courseUnit === b.courseUnit && a.activity === b.activity;

function causeOfRevisit(
  { old, now }: Change,
  segment: PlannedSegment,
  changes: readonly Change[],
  { spent, context }: Comparison,
): Cause {
  if (old !== null && spent.includes(old)) return { kind: 'notReached' };
  if (old === null || now === null) return { kind: 'due' };
  const seen =
    context.observed.some((o) => o.skill === segment.skill) ||
    context.taught.some((lesson) => lesson.revisited.some((skill) => skill === segment.skill));
  // A revisit that completing some work brings follows that work.
  const source = changes.some(
    (change) =>
      change.old !== null &&
      change.old.segment.kind !== 'revisit' &&
      isSameActivity(change.old.segment, old.segment),
  );
  const sameNeed = neededBy(old.segment) === neededBy(segment);
  return seen || source || !sameNeed || old.segment.activity !== now.segment.activity
    ? { kind: 'due' }
    : { kind: 'madeRoom' };
}

const neededBy = (segment: PlannedSegment) =>
  segment.reasons.find((reason) => reason.kind === 'neededNext')?.by ?? null;

/** What happened to this activity itself since the plan before, if that explains the change. */
function causeInItself(change: Change, segment: PlannedSegment, comparison: Comparison): Cause | null {
  const { before, after, context, spent, coming, now } = comparison;
  const isIt = (other: ActivityRef) => isSameActivity(other, segment);
  const own = (list: readonly PlacedSegment[]) =>
    list.filter((p) => p.segment.kind !== 'revisit' && isIt(p.segment));
  const sum = (list: readonly PlacedSegment[]) => list.reduce((total, p) => total + p.segment.planned, 0);

  const isKnown = (list: readonly PlacedSegment[]) =>
    own(list).some((p) => p.segment.reasons.some((reason) => reason.kind === 'knownAlready'));
  if (isKnown(now) && !isKnown(coming) && !isKnown(spent)) return { kind: 'knownAlready' };
  const work = context.taught.flatMap((lesson) => lesson.work.filter(isIt));
  if (work.some((w) => w.outcome === 'finished')) return { kind: 'fasterThanPlanned' };

  const leftOut = (plan: CoursePlan) => plan.leftOut.filter(isIt).reduce((total, l) => total + l.minutes, 0);
  const left = sum(own(now)) + leftOut(after);
  const wanted = sum(own(coming)) + leftOut(before);
  // An extension is never left out, only not taken up: for want of room, if nothing else.
  if (left === 0 && change.now === null && segment.kind === 'work') {
    if (context.observed.length > 0) return { kind: 'knownAlready' };
    if (work.length > 0) return { kind: 'fasterThanPlanned' };
  }
  const plannedMeanwhile = sum(own(spent));
  if (work.length === 0 && plannedMeanwhile > 0) return { kind: 'notReached' };
  if (work.length > 0 && left > wanted) {
    const actual = work.reduce((total, w) => total + w.actual, 0);
    return { kind: actual < plannedMeanwhile ? 'notReached' : 'slowerThanPlanned' };
  }
  if (work.length > 0 && left < wanted) return { kind: 'fasterThanPlanned' };
  if (segment.kind === 'extension') return null;
  // Not touched itself, yet more or fewer minutes: the student's pace is seen differently now, if anything was logged.
  if (!context.taught.some((lesson) => lesson.work.length > 0) || leftOut(after) > 0) return null;
  // A plan read back from the studio's records may not know what the pace was believed to be.
  const drift = before.pace.sd > 0 ? after.pace.mean - before.pace.mean : left - wanted;
  if ((left > wanted && drift > 0) || (left < wanted && drift < 0)) return { kind: 'paceLearnt' };
  return null;
}

function causeElsewhere({ old, now }: Change, segment: PlannedSegment, changes: readonly Change[]): Cause {
  const base = segment.reasons.find((reason) => reason.kind === 'restsOn');
  if (base !== undefined && old !== null && now !== null && now.date > old.date) {
    const held = changes.some(
      (change) =>
        change.old !== null &&
        change.now !== null &&
        change.now.segment.kind !== 'revisit' &&
        isSameActivity(base, change.now.segment) &&
        change.now.segment.completes &&
        // It now ends in or after the lesson in which this one stood: that alone pushes this one on.
        change.now.date > old.date,
    );
    if (held) return { kind: 'restsOnMoved', title: base.title };
  }
  return { kind: 'madeRoom' };
}
