// What a move takes from where to where: some minutes of a few activities, each from one lesson to another. Told
// without touching the plan: whether a lesson would hold what it has with what joins and without what leaves.

import { cells, listedActivity } from './chunk-list.ts';
import { addInt, int, newInts, setInt } from './memory.ts';
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
import {
  blocks,
  doneAt,
  firstAt,
  lessonOf,
  minutes,
  never,
  opening,
  reviewAt,
  squares,
  total,
} from './state.ts';

/** Most activities in one move. */
export const mostMoving: i32 = 4;
export let movingCount: i32 = 0;
/** Of each: its place in the list of chunks, the activity, its minutes that move, the lessons they leave and join. */
export let movingPlace: i32 = 0;
export let moving: i32 = 0;
export let movingMinutes: i32 = 0;
export let movingFrom: i32 = 0;
export let movingTo: i32 = 0;
/** 1 where nothing of it stays in the lesson it leaves, and where nothing of it stands in the one it joins. */
export let isGone: i32 = 0;
export let isNew: i32 = 0;
/** Where the revisit of each stands, which is lifted; −1: nowhere. */
let liftedFrom: i32 = 0;
// what the move changes in each lesson, revisits of what moves lifted out of it
let placedChange: i32 = 0;
let squaredChange: i32 = 0;
let piecesChange: i32 = 0;
let lifted: i32 = 0;

export function createMoving(): void {
  movingCount = 0;
  movingPlace = newInts(mostMoving);
  moving = newInts(mostMoving);
  movingMinutes = newInts(mostMoving);
  movingFrom = newInts(mostMoving);
  movingTo = newInts(mostMoving);
  isGone = newInts(mostMoving);
  isNew = newInts(mostMoving);
  liftedFrom = newInts(mostMoving);
  placedChange = newInts(lessonCount);
  squaredChange = newInts(lessonCount);
  piecesChange = newInts(lessonCount);
  lifted = newInts(lessonCount);
}

export function clearMoving(): void {
  for (let k = 0; k < movingCount; k++) {
    clearLesson(int(movingFrom, k));
    if (int(movingTo, k) >= 0) clearLesson(int(movingTo, k));
    if (int(liftedFrom, k) >= 0) setInt(lifted, int(liftedFrom, k), 0);
  }
  movingCount = 0;
}

function clearLesson(l: i32): void {
  setInt(placedChange, l, 0);
  setInt(squaredChange, l, 0);
  setInt(piecesChange, l, 0);
}

/** Adds minutes of a listed chunk; its goal is set afterwards. */
export function addMoving(place: i32, m: i32): void {
  const k = movingCount++;
  const cell = int(cells, place);
  const i = int(listedActivity, place);
  const from = int(lessonOf, cell);
  setInt(movingPlace, k, place);
  setInt(moving, k, i);
  setInt(movingMinutes, k, m);
  setInt(movingFrom, k, from);
  setInt(movingTo, k, -1);
  const had = int(minutes, cell);
  const gone = had === m ? 1 : 0;
  setInt(isGone, k, gone);
  change(from, -m, -m * (2 * had - m), -gone);
  const r = int(reviewOf, i);
  const at = r < 0 ? never : int(reviewAt, r);
  setInt(liftedFrom, k, at === never ? -1 : at);
  if (at !== never) addInt(lifted, at, int(reviewMinutes, r));
}

/** Where what was added last goes. */
export function sendTo(l: i32): void {
  const k = movingCount - 1;
  const row = int(moving, k) * lessonCount;
  const m = int(movingMinutes, k);
  const before = int(movingTo, k);
  if (before >= 0) change(before, -m, -m * (2 * int(minutes, row + before) + m), -int(isNew, k));
  setInt(movingTo, k, l);
  const had = int(minutes, row + l);
  const joins = had === 0 ? 1 : 0;
  setInt(isNew, k, joins);
  change(l, m, m * (2 * had + m), joins);
}

function change(l: i32, placed: i32, squared: i32, pieces: i32): void {
  addInt(placedChange, l, placed);
  addInt(squaredChange, l, squared);
  addInt(piecesChange, l, pieces);
}

export function isMoving(i: i32): bool {
  for (let k = 0; k < movingCount; k++) if (int(moving, k) === i) return true;
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

/** Whether a lesson with the move made holds that without `m` of the `had` minutes of an activity, and its revisit there. */
export function fitsWithout(l: i32, m: i32, had: i32, review: i32): bool {
  return holds(l, -m, -m * (2 * had - m), m > 0 && m === had ? -1 : 0, review);
}

/** Whether a lesson with the move made holds so much more, beside a revisit that goes. */
function holds(l: i32, placed: i32, squared: i32, pieces: i32, review: i32): bool {
  const up = int(lifted, l) + review;
  const rest = int(total, l) + int(placedChange, l) + placed - up;
  if (int(blocks, l) + int(piecesChange, l) + pieces > int(maxBlocks, l) || rest > int(capacity, l))
    return false;
  const sum = int(squares, l) + int(squaredChange, l) + squared;
  return sum + up * (up - 2 * int(opening, l)) <= squareLimit(l, rest);
}

/** Minutes too many in a lesson with the move made; below 0 there is room. */
export function excess(l: i32): i32 {
  return int(total, l) + int(placedChange, l) - int(lifted, l) - int(capacity, l);
}

/** Whether a lesson holds what it has with the move made. */
export function wouldFit(l: i32): bool {
  return fitsWithout(l, 0, 0, 0);
}

/** The same with a chunk of so many minutes that would join what is there. */
export function hasRoomFor(l: i32, m: i32): bool {
  return holds(l, m, m * m, 1, 0);
}
