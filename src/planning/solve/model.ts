// The planning problem as flat arrays of numbers, made once per solve: everything the kernel looks up in its loops.

import { squareLimits } from '../problem/overrun.ts';
import type { PlanningProblem, ProblemActivity } from '../problem/problem.ts';
import { reviewDues } from '../problem/review-due.ts';

export interface Model {
  readonly lessonCount: number;
  readonly activityCount: number;
  readonly strandCount: number;
  readonly reviewCount: number;
  // by lesson
  readonly capacity: Int32Array;
  readonly recap: Int32Array;
  readonly reviewMax: Int32Array;
  readonly maxBlocks: Int32Array;
  readonly maxStrands: Int32Array;
  /** Where a revisit falls due for work completed in this lesson; `lessonCount` when beyond the last. */
  readonly dueAfter: Int32Array;
  /** Largest Σm² by Σm, one table per lesson. */
  readonly squareLimit: readonly Int32Array[];
  // by activity
  readonly strand: Int32Array;
  readonly demand: Int32Array;
  readonly minChunk: Int32Array;
  readonly maxChunk: Int32Array;
  /** The most minutes that leave a rest of at least one chunk; less than a chunk when only all or nothing will do. */
  readonly maxPartial: Int32Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** Cost of a core minute left undone (0 for extensions); worth of a finished extension (0 for core). */
  readonly weight: Float64Array;
  readonly value: Float64Array;
  readonly preds: readonly Int32Array[];
  readonly succs: readonly Int32Array[];
  /** 1 when core minutes of positive weight rest on it, directly or not. */
  readonly carries: Uint8Array;
  /** The revisit its completion brings, as an index, or −1. */
  readonly reviewOf: Int32Array;
  /** Lessons in a row up to lesson 0, when the run limit can bite at all; −1 when it cannot. */
  readonly runStart: Int32Array;
  // by revisit: the listed ones, then those that completions bring
  readonly reviewMinutes: Int32Array;
  /** Due lesson of a listed revisit; −1 when it hangs on an activity. */
  readonly reviewDue: Int32Array;
  readonly reviewWeight: Float64Array;
  readonly reviewActivity: Int32Array;
  // weights
  readonly lateWeight: number;
  readonly soloWeight: number;
  readonly splitWeight: number;
  readonly maxRun: number;
  readonly parkGap: number;
}

export function createModel(problem: PlanningProblem): Model {
  const { lessons, activities, strands, reviews, weights } = problem;
  const lessonCount = lessons.length;
  const indexById = new Map(activities.map(({ id }, i) => [id, i]));
  const strandById = new Map(strands.map(({ id }, s) => [id, s]));
  const preds = activities.map((activity) =>
    Int32Array.from(new Set(activity.preds.map((id) => indexById.get(id) ?? 0))),
  );
  const succs = activities.map((_, i) =>
    Int32Array.from(activities.flatMap((_other, j) => (preds[j]?.includes(i) ? [j] : []))),
  );
  const runs = activities.map((activity) => runUpTo(problem, activity));
  const withReview = activities.flatMap(({ review }, i) => (review > 0 ? [i] : []));
  const reviewOf = new Int32Array(activities.length).fill(-1);
  withReview.forEach((i, k) => {
    reviewOf[i] = reviews.length + k;
  });
  const smallest = activities.map(({ minChunk }) => Math.max(1, minChunk));
  return {
    lessonCount,
    activityCount: activities.length,
    strandCount: strands.length,
    reviewCount: reviews.length + withReview.length,
    capacity: Int32Array.from(lessons, ({ length, fixed }) => length - fixed),
    recap: Int32Array.from(lessons, ({ recap }) => recap),
    reviewMax: Int32Array.from(lessons, ({ reviewMax }) => reviewMax),
    maxBlocks: Int32Array.from(lessons, ({ maxBlocks }) => maxBlocks),
    maxStrands: Int32Array.from(lessons, ({ maxStrands }) => maxStrands),
    dueAfter: Int32Array.from(reviewDues(lessons, problem.reviewGapDays), (due) => due ?? lessonCount),
    squareLimit: limitTables(problem),
    strand: Int32Array.from(activities, ({ strand }) => strandById.get(strand) ?? 0),
    demand: Int32Array.from(activities, ({ demand }) => demand),
    minChunk: Int32Array.from(smallest),
    maxChunk: Int32Array.from(activities, ({ maxChunk, demand }) => Math.min(maxChunk, demand)),
    maxPartial: Int32Array.from(activities, ({ demand }, i) => demand - (smallest[i] ?? 1)),
    first: Int32Array.from(activities, ({ first }, i) => Math.max(first, runs[i]?.rest ?? 0)),
    last: Int32Array.from(activities, ({ last }) => Math.min(last, lessonCount - 1)),
    weight: Float64Array.from(activities, ({ kind, weight }) => (kind === 'core' ? weight : 0)),
    value: Float64Array.from(activities, ({ kind, value }) => (kind === 'ext' ? value : 0)),
    preds,
    succs,
    carries: carriers(activities, succs),
    reviewOf,
    runStart: Int32Array.from(runs, ({ start }) => start),
    reviewMinutes: Int32Array.from([
      ...reviews.map(({ minutes }) => minutes),
      ...withReview.map((i) => activities[i]?.review ?? 0),
    ]),
    reviewDue: Int32Array.from([
      ...reviews.map(({ due }) => Math.min(due, lessonCount)),
      ...withReview.map(() => -1),
    ]),
    reviewWeight: Float64Array.from([...reviews.map(({ weight }) => weight), ...withReview.map(() => 1)]),
    reviewActivity: Int32Array.from([...reviews.map(() => -1), ...withReview]),
    lateWeight: weights.late,
    soloWeight: strands.length > 1 ? weights.solo : 0,
    splitWeight: weights.split,
    maxRun: problem.maxRun,
    parkGap: problem.parkGap,
  };
}

/** One table for each different capacity, shared by the lessons that have it. */
function limitTables({ lessons, z, sigma, tau }: PlanningProblem): readonly Int32Array[] {
  const tableByCapacity = new Map<number, Int32Array>();
  return lessons.map(({ length, fixed }) => {
    const capacity = length - fixed;
    const known = tableByCapacity.get(capacity);
    if (known !== undefined) return known;
    const table = Int32Array.from(squareLimits(capacity, z, sigma, tau));
    tableByCapacity.set(capacity, table);
    return table;
  });
}

/** The run an activity brings into lesson 0: lessons it must still rest, or its lessons in a row where that can matter. */
function runUpTo(
  { maxRun, parkGap }: PlanningProblem,
  { recent = [], demand, minChunk }: ProblemActivity,
): { readonly rest: number; readonly start: number } {
  if (parkGap === 0) return { rest: 0, start: -1 };
  const before = maxRun + parkGap - 1;
  let rest = 0;
  for (let newest = 0; newest + maxRun <= before; newest++) {
    let inARow = true;
    for (let h = newest; h < newest + maxRun; h++) if (recent[h] !== 1) inARow = false;
    if (inARow) rest = Math.max(rest, parkGap - newest);
  }
  let row = 0;
  while (row < before && recent[row] === 1) row++;
  const start = rest > 0 ? 0 : row;
  const mostChunks = Math.floor(demand / Math.max(1, minChunk));
  return { rest, start: start + mostChunks > maxRun ? start : -1 };
}

function carriers(activities: readonly ProblemActivity[], succs: readonly Int32Array[]): Uint8Array {
  const carries = new Uint8Array(activities.length);
  let changed = true;
  while (changed) {
    changed = false;
    succs.forEach((list, i) => {
      if (carries[i] === 1) return;
      for (const j of list) {
        const other = activities[j];
        const heavy = other?.kind === 'core' && other.weight > 0 && other.demand > 0;
        if (!heavy && carries[j] !== 1) continue;
        carries[i] = 1;
        changed = true;
        return;
      }
    });
  }
  return carries;
}
