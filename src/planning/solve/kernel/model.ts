// The planning problem as the kernel reads it: the arrays of `model.ts` outside, one after the other.

import { int, real } from './memory.ts';

export let lessonCount: i32 = 0;
export let activityCount: i32 = 0;
export let strandCount: i32 = 0;
export let reviewCount: i32 = 0;
export let maxRun: i32 = 0;
export let parkGap: i32 = 0;
export let hasLast: bool = false;
// by lesson
export let capacity: i32 = 0;
export let recap: i32 = 0;
export let reviewMax: i32 = 0;
export let maxBlocks: i32 = 0;
export let maxStrands: i32 = 0;
export let dueAfter: i32 = 0;
/** Address of each lesson's table of the largest Σm² by Σm. */
let limitOf: i32 = 0;
let limits: i32 = 0;
// by activity
export let strandOf: i32 = 0;
export let demandOf: i32 = 0;
export let minChunkOf: i32 = 0;
export let maxChunkOf: i32 = 0;
export let maxPartialOf: i32 = 0;
export let firstOf: i32 = 0;
export let lastOf: i32 = 0;
export let carries: i32 = 0;
export let reviewOf: i32 = 0;
export let runStart: i32 = 0;
export let weightOf: i32 = 0;
export let worthOf: i32 = 0;
/** What i rests on: `preds[predStart[i]]` up to `preds[predStart[i + 1] - 1]`; the same for what rests on it. */
export let predStart: i32 = 0;
export let preds: i32 = 0;
export let succStart: i32 = 0;
export let succs: i32 = 0;
// by revisit
export let reviewMinutes: i32 = 0;
export let reviewDue: i32 = 0;
export let reviewActivity: i32 = 0;
export let reviewWeight: i32 = 0;
// the plan before
export let lastMinutes: i32 = 0;
export let lastReviewAt: i32 = 0;
// weights
export let lateWeight: f64 = 0;
export let soloWeight: f64 = 0;
export let splitWeight: f64 = 0;
/** Beside E: of each lesson that passes between two goes of an activity. */
export let gapWeight: f64 = 0;
/** Longest demand there is. */
export let mostDemand: i32 = 0;

let cursor: i32 = 0;

function take(count: i32): i32 {
  const at = cursor;
  cursor += count << 2;
  return at;
}

/** Reads a problem from the two arrays that `pack-model.ts` writes; the order is the same there. */
export function readModel(ints: i32, reals: i32): void {
  cursor = ints;
  const head = take(10);
  lessonCount = int(head, 0);
  activityCount = int(head, 1);
  strandCount = int(head, 2);
  reviewCount = int(head, 3);
  maxRun = int(head, 4);
  parkGap = int(head, 5);
  hasLast = int(head, 6) === 1;
  capacity = take(lessonCount);
  recap = take(lessonCount);
  reviewMax = take(lessonCount);
  maxBlocks = take(lessonCount);
  maxStrands = take(lessonCount);
  dueAfter = take(lessonCount);
  limitOf = take(lessonCount);
  limits = take(int(head, 7));
  strandOf = take(activityCount);
  demandOf = take(activityCount);
  minChunkOf = take(activityCount);
  maxChunkOf = take(activityCount);
  maxPartialOf = take(activityCount);
  firstOf = take(activityCount);
  lastOf = take(activityCount);
  carries = take(activityCount);
  reviewOf = take(activityCount);
  runStart = take(activityCount);
  predStart = take(activityCount + 1);
  preds = take(int(head, 8));
  succStart = take(activityCount + 1);
  succs = take(int(head, 9));
  reviewMinutes = take(reviewCount);
  reviewDue = take(reviewCount);
  reviewActivity = take(reviewCount);
  lastMinutes = take(hasLast ? activityCount * lessonCount : 0);
  lastReviewAt = take(hasLast ? reviewCount : 0);
  lateWeight = real(reals, 0);
  soloWeight = real(reals, 1);
  splitWeight = real(reals, 2);
  gapWeight = real(reals, 3);
  weightOf = reals + (4 << 3);
  worthOf = weightOf + (activityCount << 3);
  reviewWeight = worthOf + (activityCount << 3);
  mostDemand = 0;
  for (let i = 0; i < activityCount; i++) mostDemand = max(mostDemand, int(demandOf, i));
}

/** Largest Σm² of a lesson whose minutes add up to `total`, which is at most its capacity. */
export function squareLimit(l: i32, total: i32): i32 {
  return int(limits, int(limitOf, l) + total);
}
