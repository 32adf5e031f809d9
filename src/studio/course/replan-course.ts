// Plans a course again after a change: assemble, plan, lay out, and add to the list of what moved.

import type { PlainDate, Random } from '#core';
import { type CoursePlan, changesBetween, defaultPacePrior, type Move } from '#planning';
import type { CourseUnitId, LessonId, PlanFacts } from '../record/records.ts';
import type { Reader, Transactor } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import { assembleCourseInput, type LibraryRecords } from './assemble-course-input.ts';
import { type CourseRecords, isSettled, loadCourse } from './course-records.ts';
import { layPlan } from './lay-plan.ts';
import type { PlanEffort, Planner } from './planner.ts';
import { previousPlan } from './previous-plan.ts';

export interface ReplanCause {
  /** Lessons closed, or corrected after closing, since. */
  readonly taught: readonly LessonId[];
  /** Units given just now. */
  readonly given: readonly CourseUnitId[];
}

export interface ReplanTools {
  readonly planner: Planner;
  readonly library: LibraryRecords;
  readonly today: PlainDate;
  readonly random: Random;
  readonly effort: PlanEffort;
}

/** Plans and lays out; what moved comes back, and what is to be kept of the plan. `before` are the records as they were before the change. */
export async function replanCourse(
  tx: Transactor,
  before: CourseRecords,
  cause: ReplanCause,
  { planner, library, today, random, effort }: ReplanTools,
): Promise<{ readonly moves: readonly Move[]; readonly facts: PlanFacts }> {
  const records = (await loadCourse(tx, before.course.id)) ?? before;
  const previous = previousPlan(before, today);
  const input = assembleCourseInput(records, library, today);
  const plan = planner.planCourse(input, previous, effort);
  await layPlan(tx, records, plan, { today, random });
  const facts: PlanFacts = { fingerprint: plan.fingerprint, pace: plan.pace, leftOut: plan.leftOut };
  if (previous === null) return { moves: [], facts };
  const changes = changesBetween(assembleCourseInput(before, library, today), input);
  const context = {
    ...changes,
    taught: [
      ...changes.taught.filter((t) => !cause.taught.some((id) => id === t.id)),
      ...input.taught.filter((t) => cause.taught.some((id) => id === t.id)),
    ],
  };
  const moves = planner
    .listMoves(comparable(previous, before, cause, today), plan, context)
    .filter((move) => !isMinute(move) && !isNewlyGiven(move, plan, cause.given));
  return { moves, facts };
}

/** Lessons settled before and not closed by this change are the same in both plans: nothing in them has moved. */
function comparable(
  previous: CoursePlan,
  before: CourseRecords,
  cause: ReplanCause,
  today: PlainDate,
): CoursePlan {
  const settled = new Set<string>(
    before.lessons
      .filter((l) => isSettled(before, l, today) && !cause.taught.includes(l.id))
      .map((l) => l.id),
  );
  return { ...previous, lessons: previous.lessons.filter((l) => !settled.has(l.lesson)) };
}

/** A minute more or less in the same lesson is nothing to look at. */
function isMinute({ from, to }: Move): boolean {
  return from !== null && to !== null && from.date === to.date && Math.abs(from.minutes - to.minutes) <= 1;
}

function isNewlyGiven(move: Move, plan: CoursePlan, given: readonly CourseUnitId[]): boolean {
  if (move.from !== null || given.length === 0) return false;
  const segment = plan.lessons.flatMap((l) => l.segments).find((s) => s.key === move.key);
  return given.some((unit) => unit === segment?.courseUnit);
}

/**
 * What moved since the teacher last looked: an earlier move and a later one of the same work become one, and what came
 * back to where it was drops out.
 */
export function accumulateMoves(earlier: readonly Move[], later: readonly Move[]): readonly Move[] {
  const byKey = new Map(earlier.map((m) => [m.key, m]));
  for (const move of later) {
    const first = byKey.get(move.key);
    byKey.delete(move.key);
    const joined = first === undefined ? move : joinMoves(first, move);
    if (!isSamePlace(joined.from, joined.to)) byKey.set(joined.key, joined);
  }
  return [...byKey.values()];
}

/**
 * From where it was first to where it is now, with a cause that is true of the whole way: the last one, unless what took
 * it away from where it was still holds, or the last only brought it part of the way back.
 */
function joinMoves(first: Move, last: Move): Move {
  const joined = { ...last, from: first.from };
  if (first.from === null || last.to === null || last.because.kind === 'byHand') return joined;
  const isGone = first.because.kind === 'lessonGone' && first.because.date === first.from.date;
  const isPartBack =
    last.because.kind === 'madeRoom' &&
    last.from !== null &&
    last.to.date < last.from.date !== last.to.date < first.from.date;
  return isGone || isPartBack ? { ...joined, because: first.because } : joined;
}

/** Without what no longer matters: days gone by, and work that has been taught meanwhile. */
export function currentMoves(
  moves: readonly Move[],
  today: PlainDate,
  taughtKeys: ReadonlySet<string>,
): readonly Move[] {
  return moves.filter((move) => {
    const day = (move.to ?? move.from)?.date;
    // A piece of work has its key for good; a revisit's key is counted anew from each lesson.
    const isTaught = move.key.startsWith('work:') && taughtKeys.has(move.key);
    return !isTaught && day !== undefined && day >= today;
  });
}

const isSamePlace = (a: Move['from'], b: Move['to']): boolean =>
  a === null || b === null ? a === b : a.date === b.date && a.minutes === b.minutes;

/** What planning reads of the whole studio: all skills, the units that are not retired, and the pace of all its students. */
export async function loadLibrary(reader: Reader): Promise<LibraryRecords> {
  const units = await reader.list('unit');
  return {
    skills: await reader.list('skill'),
    units: units.filter((u) => !u.retired).map((u) => u.document),
    pacePrior: (await reader.get('studio', studioId))?.pace?.prior ?? defaultPacePrior,
  };
}
