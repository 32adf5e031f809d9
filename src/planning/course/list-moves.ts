// What moved from one plan to the next, and the cause of each move: rules [M…] of SPEC.md. Only what is still to come is
// compared: a lesson that was taught is no move.

import type { PlainDate } from '#core';
import { activityId } from './course-activity.ts';
import type { Work } from './course-input.ts';
import type { CoursePlan, Move, MoveContext, PlannedSegment } from './course-plan.ts';

interface Placed {
  readonly segment: PlannedSegment;
  readonly lesson: string;
  readonly date: PlainDate;
}

/** All that happened to one activity since the plan before. */
interface Since {
  readonly work: readonly Work[];
  /** Clock minutes that the plan before had for it in lessons that were taught meanwhile. */
  readonly plannedMinutes: number;
}

/** The moves of work, extensions and revisits, in the order of the lessons they were in or came to. */
export function listMoves(before: CoursePlan, after: CoursePlan, context: MoveContext): readonly Move[] {
  const taughtIds = new Set(context.taught.map((lesson) => lesson.id));
  const goneIds = new Set(context.gone);
  const from = new Map<string, Placed>();
  const spent: Placed[] = [];
  for (const placed of placedSegments(before))
    if (taughtIds.has(placed.lesson)) spent.push(placed);
    else from.set(placed.segment.key, placed);
  const to = new Map(placedSegments(after).map((placed) => [placed.segment.key, placed]));

  const moves: Move[] = [];
  const note = (old: Placed | null, now: Placed | null) => {
    const shown = now ?? old;
    if (shown === null || isSame(old, now)) return;
    moves.push({
      key: shown.segment.key,
      title: shown.segment.title,
      from: old === null ? null : { date: old.date, minutes: old.segment.planned },
      to: now === null ? null : { date: now.date, minutes: now.segment.planned },
      because: causeOf(old, now, after, context, spent, goneIds),
    });
  };
  for (const now of to.values()) {
    // Work that the last lesson did not reach keeps its key: it comes from the lesson that was taught without it.
    const unreached = spent.find((old) => old.segment.key === now.segment.key) ?? null;
    note(from.get(now.segment.key) ?? unreached, now);
  }
  for (const [key, old] of from) if (!to.has(key) && !isDone(old, context)) note(old, null);
  const dayOf = (move: Move) => move.from?.date ?? move.to?.date ?? '';
  return moves.sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : a.key < b.key ? -1 : 1));
}

function placedSegments(plan: CoursePlan): readonly Placed[] {
  return plan.lessons.flatMap(({ lesson, date, segments }) =>
    segments
      .filter(({ kind }) => kind === 'work' || kind === 'extension' || kind === 'revisit')
      .map((segment) => ({ segment, lesson, date })),
  );
}

const isSame = (old: Placed | null, now: Placed | null) =>
  old !== null && now !== null && old.date === now.date && old.segment.planned === now.segment.planned;

/** A revisit that took place in a lesson taught meanwhile is done, not moved. */
function isDone({ segment }: Placed, { taught }: MoveContext): boolean {
  return (
    segment.kind === 'revisit' &&
    taught.some((lesson) => segment.skill !== null && lesson.revisited.includes(segment.skill))
  );
}

function causeOf(
  old: Placed | null,
  now: Placed | null,
  after: CoursePlan,
  context: MoveContext,
  spent: readonly Placed[],
  goneIds: ReadonlySet<string>,
): Move['because'] {
  const segment = (now ?? old)?.segment;
  if (segment === undefined) return { kind: 'madeRoom' };
  if (isByHand(segment, context) || old?.segment.pinned !== now?.segment.pinned) {
    const wasPinned = old?.segment.pinned === true || now?.segment.pinned === true;
    if (isByHand(segment, context) || wasPinned) return { kind: 'byHand' };
  }
  if (old !== null && goneIds.has(old.lesson)) return { kind: 'lessonGone', date: old.date };
  if (segment.kind === 'revisit') {
    // A revisit waits for its memory; anything else that moves it is the room it needs.
    const seen = context.observed.some((o) => o.skill === segment.skill) || wasWorked(segment, context);
    return seen || old === null || now === null ? { kind: 'due' } : { kind: 'madeRoom' };
  }
  return causeOfWork(segment, old, now, after, context, spent);
}

function isByHand(segment: PlannedSegment, { byHand }: MoveContext): boolean {
  return byHand.some((touched) =>
    'skill' in touched
      ? touched.skill === segment.skill
      : touched.courseUnit === segment.courseUnit && touched.activity === segment.activity,
  );
}

const isOf = (segment: PlannedSegment) => (work: Work) =>
  work.courseUnit === segment.courseUnit && work.activity === segment.activity;

const wasWorked = (segment: PlannedSegment, { taught }: MoveContext) =>
  taught.some((lesson) => lesson.work.some(isOf(segment)));

function causeOfWork(
  segment: PlannedSegment,
  old: Placed | null,
  now: Placed | null,
  after: CoursePlan,
  context: MoveContext,
  spent: readonly Placed[],
): Move['because'] {
  if (now?.segment.reasons.some((reason) => reason.kind === 'knownAlready')) return { kind: 'knownAlready' };
  const since = sinceOf(segment, context, spent);
  const finished = since.work.some((work) => work.outcome === 'finished');
  if (now === null) {
    if (finished) return { kind: 'fasterThanPlanned' };
    const left = after.leftOut.some(
      (l) => l.courseUnit === segment.courseUnit && l.activity === segment.activity,
    );
    const remains = after.lessons.some((lesson) =>
      lesson.segments.some((s) => s.courseUnit === segment.courseUnit && s.activity === segment.activity),
    );
    if (left) return { kind: 'madeRoom' };
    if (!remains) return { kind: 'knownAlready' };
  }
  if (since.work.length > 0) {
    const actual = since.work.reduce((sum, work) => sum + work.actual, 0);
    const covered = since.work.reduce((sum, work) => sum + work.covered, 0);
    const pace = actual / Math.max(1e-9, covered);
    const expected = Math.exp(after.pace.mean);
    const lastTaught = context.taught.at(-1)?.date ?? null;
    const shrank = (old?.segment.planned ?? 0) > (now?.segment.planned ?? 0);
    if (lastTaught !== null && since.plannedMinutes > actual)
      return { kind: shrank ? 'fasterThanPlanned' : 'notReached' };
    if (pace > expected) return { kind: 'slowerThanPlanned' };
    return { kind: shrank || now === null ? 'fasterThanPlanned' : 'slowerThanPlanned' };
  }
  if (since.plannedMinutes > 0) return { kind: 'notReached' };
  return { kind: 'madeRoom' };
}

function sinceOf(segment: PlannedSegment, context: MoveContext, spent: readonly Placed[]): Since {
  const id = activityId(segment.courseUnit ?? '', segment.activity ?? '');
  return {
    work: context.taught.flatMap((lesson) => lesson.work.filter(isOf(segment))),
    plannedMinutes: spent
      .filter(({ segment: s }) => activityId(s.courseUnit ?? '', s.activity ?? '') === id)
      .reduce((sum, { segment: s }) => sum + s.planned, 0),
  };
}
