// What no plan can go below, found in a moment: when the search reaches it at one level, it goes on to the next.

import { insertActivity } from './insert-activity.ts';
import { fillInts, int, newInts, real, setInt } from './memory.ts';
import {
  activityCount,
  capacity,
  demandOf,
  firstOf,
  lastOf,
  lessonCount,
  maxBlocks,
  maxChunkOf,
  maxStrands,
  minChunkOf,
  predStart,
  preds,
  recap,
  splitWeight,
  squareLimit,
  weightOf,
  worthOf,
} from './model.ts';
import { clearState, doneAt, never, removeActivity, startStep, sum } from './state.ts';

export let leastUndone: f64 = 0;
/** Least P of the plans that reach the least U. */
export let leastPenalty: f64 = 0;
let earliest: i32 = 0;

export function createBounds(): void {
  earliest = newInts(activityCount);
}

/**
 * Each activity alone in empty lessons, after what it rests on: what it cannot do there is left undone in every plan.
 * Plans at that least U do all the rest, in no fewer chunks than the longest one demands. Leaves the state empty.
 */
export function findBounds(): void {
  clearState();
  fillInts(earliest, activityCount, -1);
  leastUndone = 0;
  leastPenalty = 0;
  for (let i = 0; i < activityCount; i++) visit(i);
  clearState();
}

/** The earliest lesson that can complete it. */
function visit(i: i32): i32 {
  const known = int(earliest, i);
  if (known >= 0) return known;
  let from = int(firstOf, i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) from = max(from, visit(int(preds, k)));
  const demand = int(demandOf, i);
  let most = 0;
  let done = demand === 0 && lessonCount > 0 ? 0 : never;
  for (let l = from; l <= int(lastOf, i); l++) {
    most += aloneIn(i, l);
    if (done === never && most >= demand) done = l;
  }
  setInt(earliest, i, done);
  if (demand === 0) return done;
  if (most < demand) leastPenalty += real(worthOf, i);
  const weight = real(weightOf, i);
  if (weight === 0) return done;
  const placed = from < lessonCount ? mostAlone(i) : 0;
  leastUndone += weight * f64(demand - placed);
  const longest = max(1, int(maxChunkOf, i));
  if (placed > 0) leastPenalty += splitWeight * f64((placed + longest - 1) / longest - 1);
  return done;
}

/** With the preceding work complete as early as can be, the programme says how much fits at most. */
function mostAlone(i: i32): i32 {
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const p = int(preds, k);
    setInt(doneAt, p, int(earliest, p));
  }
  startStep();
  insertActivity(i, false, 0);
  const placed = int(sum, i);
  removeActivity(i);
  return placed;
}

/** Most minutes of an activity in an otherwise empty lesson. */
function aloneIn(i: i32, l: i32): i32 {
  const opening = int(recap, l);
  if (int(maxBlocks, l) < 1 || int(maxStrands, l) < 1) return 0;
  for (let m = int(maxChunkOf, i); m >= int(minChunkOf, i); m--)
    if (opening + m <= int(capacity, l) && opening * opening + m * m <= squareLimit(l, opening + m)) return m;
  return 0;
}
