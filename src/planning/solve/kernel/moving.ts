// What a move takes from where to where: some minutes of a few activities, each from one lesson to another. Told
// without touching the plan: whether a lesson would hold what it has with what joins and without what leaves.

import { cells, listedActivity } from './chunk-list.ts';
import { int, newInts, setInt } from './memory.ts';
import {
  capacity,
  firstOf,
  lastOf,
  lessonCount,
  maxBlocks,
  predStart,
  preds,
  reviewMinutes,
  reviewOf,
  squareLimit,
  succStart,
  succs,
} from './model.ts';
import { blocks, doneAt, firstAt, lessonOf, minutes, opening, reviewAt, squares, total } from './state.ts';

/** Most activities in one move. */
export const mostMoving: i32 = 4;
export let movingCount: i32 = 0;
/** Of each: its place in the list of chunks, the activity, its minutes that move, the lessons they leave and join. */
export let movingPlace: i32 = 0;
export let moving: i32 = 0;
export let movingMinutes: i32 = 0;
export let movingFrom: i32 = 0;
export let movingTo: i32 = 0;
// a lesson with the move made, revisits of what moves lifted out of it
let placed: i32 = 0;
let squared: i32 = 0;
let pieces: i32 = 0;
let lifted: i32 = 0;

export function createMoving(): void {
  movingPlace = newInts(mostMoving);
  moving = newInts(mostMoving);
  movingMinutes = newInts(mostMoving);
  movingFrom = newInts(mostMoving);
  movingTo = newInts(mostMoving);
}

export function clearMoving(): void {
  movingCount = 0;
}

/** Adds minutes of a listed chunk; its goal is set afterwards. */
export function addMoving(place: i32, m: i32): void {
  setInt(movingPlace, movingCount, place);
  setInt(moving, movingCount, int(listedActivity, place));
  setInt(movingMinutes, movingCount, m);
  setInt(movingFrom, movingCount, int(lessonOf, int(cells, place)));
  setInt(movingTo, movingCount, -1);
  movingCount++;
}

/** Where what was added last goes. */
export function sendTo(l: i32): void {
  setInt(movingTo, movingCount - 1, l);
}

export function isMoving(i: i32): bool {
  for (let k = 0; k < movingCount; k++) if (int(moving, k) === i) return true;
  return false;
}

/** Whether a lesson stands in one of the first `count` moves. */
export function isTouched(l: i32, count: i32): bool {
  for (let k = 0; k < count; k++) if (int(movingTo, k) === l || int(movingFrom, k) === l) return true;
  return false;
}

/** The first lesson an activity may stand in while what it rests on stays where it is. */
export function earliestOf(i: i32): i32 {
  let from = int(firstOf, i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++)
    from = max(from, int(doneAt, int(preds, k)));
  return from;
}

/** The last one, while what rests on it stays. */
export function latestOf(i: i32): i32 {
  let until = int(lastOf, i);
  for (let k = int(succStart, i); k < int(succStart, i + 1); k++)
    until = min(until, int(firstAt, int(succs, k)));
  return until;
}

/** Sums up a lesson with the move made. */
export function sumUp(l: i32): void {
  placed = int(total, l);
  squared = int(squares, l);
  pieces = int(blocks, l);
  lifted = 0;
  for (let k = 0; k < movingCount; k++) {
    const i = int(moving, k);
    const m = int(movingMinutes, k);
    const r = int(reviewOf, i);
    if (r >= 0 && int(reviewAt, r) === l) lifted += int(reviewMinutes, r);
    const before = int(minutes, i * lessonCount + l);
    if (int(movingTo, k) === l) {
      placed += m;
      squared += m * (2 * before + m);
      if (before === 0) pieces++;
    } else if (int(movingFrom, k) === l) {
      placed -= m;
      squared -= m * (2 * before - m);
      if (before === m) pieces--;
    }
  }
}

/** Whether the lesson summed up last holds that without `m` of the `had` minutes of an activity, and its revisit there. */
export function fitsWithout(l: i32, m: i32, had: i32, review: i32): bool {
  const up = lifted + review;
  const rest = placed - m - up;
  if (pieces - (m > 0 && m === had ? 1 : 0) > int(maxBlocks, l) || rest > int(capacity, l)) return false;
  const start = int(opening, l);
  return squared - m * (2 * had - m) + up * (up - 2 * start) <= squareLimit(l, rest);
}

/** Minutes too many in the lesson summed up last; below 0 there is room. */
export function excess(l: i32): i32 {
  return placed - lifted - int(capacity, l);
}

/** Whether a lesson holds what it has with the move made. */
export function wouldFit(l: i32): bool {
  sumUp(l);
  return fitsWithout(l, 0, 0, 0);
}

/** The same for what was added last, when it comes whole: mostly told at a glance. */
export function hasRoom(l: i32): bool {
  const k = movingCount - 1;
  const r = int(reviewOf, int(moving, k));
  if (isTouched(l, k) || (r >= 0 && int(reviewAt, r) === l)) return wouldFit(l);
  const m = int(movingMinutes, k);
  const sum = int(total, l) + m;
  if (sum > int(capacity, l) || int(blocks, l) >= int(maxBlocks, l)) return false;
  return int(squares, l) + m * m <= squareLimit(l, sum);
}
