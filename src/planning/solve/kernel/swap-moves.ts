// Whole chunks change places: one goes to another lesson, or two swap theirs. Where lessons are full of blocks this is
// what a ruin of two would find, at a fraction of its cost. U stays as it is, and so does the number of chunks.

import { cells, inLesson, lessonSize, listed, listedActivity } from './chunk-list.ts';
import { insertReview } from './insert-review.ts';
import { int, newInts, setInt } from './memory.ts';
import {
  activityCount,
  capacity,
  firstOf,
  gapWeight,
  lastOf,
  lateWeight,
  lessonCount,
  maxBlocks,
  maxStrands,
  predStart,
  preds,
  reviewMinutes,
  reviewOf,
  soloWeight,
  squareLimit,
  succStart,
  succs,
} from './model.ts';
import { draw, drawIndex, drawInteger } from './random.ts';
import { keepsRunLimit } from './run-programme.ts';
import {
  activityOf,
  blocks,
  doneAt,
  firstAt,
  gapsOf,
  journal,
  journalLength,
  latenessOf,
  lessonOf,
  minutes,
  minutesFit,
  never,
  opening,
  refreshActivity,
  reviewAt,
  setMinutes,
  setReview,
  squares,
  startStep,
  strandsIn,
  total,
  undoStep,
} from './state.ts';
import { moveShare, pairShare, roundShare } from './tuning.ts';

/** What the last move changed in P, and in E with the gaps that count beside it. */
export let penaltyChange: f64 = 0;
export let earlyChange: f64 = 0;
// what moves: activities, their minutes, and the lessons they leave and join
let moving: i32 = 0;
let movingMinutes: i32 = 0;
let movingFrom: i32 = 0;
let movingTo: i32 = 0;
let movingCount: i32 = 0;
const mostMoving: i32 = 3;

export function createSwaps(): void {
  moving = newInts(mostMoving);
  movingMinutes = newInts(mostMoving);
  movingFrom = newInts(mostMoving);
  movingTo = newInts(mostMoving);
}

/**
 * Makes one random move if it is allowed; false when not, with everything as it was. `undoStep` takes it back. One chunk
 * goes elsewhere, two change places, two change places with one, or three go round.
 */
export function trySwap(withReviews: bool): bool {
  movingCount = 0;
  const a = drawIndex(listed);
  const lessonA = lessonOfListed(a);
  if (draw() < moveShare) {
    const i = int(listedActivity, a);
    add(a, drawInteger(int(firstOf, i), int(lastOf, i)));
  } else {
    const b = drawIndex(listed);
    const lessonB = lessonOfListed(b);
    add(a, lessonB);
    const kind = draw();
    if (kind < roundShare) {
      const c = drawIndex(listed);
      const lessonC = lessonOfListed(c);
      if (lessonC === lessonA || lessonC === lessonB) return false;
      add(b, lessonC);
      add(c, lessonA);
    } else {
      add(b, lessonA);
      if (kind < roundShare + pairShare)
        add(int(inLesson, lessonA * activityCount + drawIndex(int(lessonSize, lessonA))), lessonB);
    }
  }
  return canMove() && makeMove(withReviews);
}

function lessonOfListed(a: i32): i32 {
  return int(lessonOf, int(cells, a));
}

function add(a: i32, to: i32): void {
  const cell = int(cells, a);
  setInt(moving, movingCount, int(listedActivity, a));
  setInt(movingMinutes, movingCount, int(minutes, cell));
  setInt(movingFrom, movingCount, int(lessonOf, cell));
  setInt(movingTo, movingCount, to);
  movingCount++;
}

/** What can be told without moving anything: different activities, empty cells, windows, blocks and minutes. */
function canMove(): bool {
  for (let k = 0; k < movingCount; k++) {
    const i = int(moving, k);
    const to = int(movingTo, k);
    if (to === int(movingFrom, k) || int(minutes, i * lessonCount + to) > 0) return false;
    if (to < int(firstOf, i) || to > int(lastOf, i)) return false;
    for (let n = 0; n < k; n++) if (int(moving, n) === i) return false;
  }
  for (let k = 0; k < movingCount; k++) if (!wouldFit(int(movingTo, k))) return false;
  return true;
}

/** Whether a lesson holds what it has with what joins it and without what leaves it, revisits of what moves aside. */
function wouldFit(l: i32): bool {
  let placed = int(total, l);
  let squared = int(squares, l);
  let pieces = int(blocks, l);
  let lifted = 0;
  for (let k = 0; k < movingCount; k++) {
    const m = int(movingMinutes, k);
    const r = int(reviewOf, int(moving, k));
    if (r >= 0 && int(reviewAt, r) === l) lifted += int(reviewMinutes, r);
    if (int(movingTo, k) === l) {
      placed += m;
      squared += m * m;
      pieces++;
    } else if (int(movingFrom, k) === l) {
      placed -= m;
      squared -= m * m;
      pieces--;
    }
  }
  if (pieces > int(maxBlocks, l) || placed - lifted > int(capacity, l)) return false;
  const before = int(opening, l);
  return squared + (before - lifted) * (before - lifted) - before * before <= squareLimit(l, placed - lifted);
}

function makeMove(withReviews: bool): bool {
  startStep();
  const soloBefore = soloOfMoving();
  let late: f64 = 0;
  earlyChange = 0;
  for (let k = 0; k < movingCount; k++) {
    const i = int(moving, k);
    const m = int(movingMinutes, k);
    if (withReviews) late -= lift(i);
    const from = int(movingFrom, k);
    const to = int(movingTo, k);
    earlyChange += f64(m * (to - from)) - gapWeight * f64(gapsOf(i));
    setMinutes(i, from, 0);
    setMinutes(i, to, m);
  }
  let allowed = true;
  for (let k = 0; k < movingCount; k++) {
    const to = int(movingTo, k);
    if (int(strandsIn, to) > int(maxStrands, to)) allowed = false;
    refreshActivity(int(moving, k));
    earlyChange += gapWeight * f64(gapsOf(int(moving, k)));
  }
  for (let k = 0; allowed && k < movingCount; k++) allowed = isInOrder(int(moving, k));
  if (!allowed) {
    undoStep();
    return false;
  }
  if (withReviews) for (let k = 0; k < movingCount; k++) late += settle(int(moving, k));
  penaltyChange = lateWeight * late + soloWeight * f64(soloOfMoving() - soloBefore);
  return true;
}

/** Lessons with one strand among those that chunks leave or join. */
function soloOfMoving(): i32 {
  let solo = soloOf(int(movingTo, 0));
  if (movingCount === 1 || movingCount === 2) return solo + soloOf(int(movingFrom, 0));
  for (let k = 1; k < movingCount; k++)
    if (int(movingTo, k) !== int(movingTo, 0)) solo += soloOf(int(movingTo, k));
  return solo;
}

/** Exchanges all the work of two lessons, if that is allowed; as `trySwap`. */
export function trySwapLessons(withReviews: bool): bool {
  if (lessonCount < 2) return false;
  const a = drawInteger(0, lessonCount - 1);
  const b = draw() < 0.5 ? a + 1 : drawInteger(0, lessonCount - 1);
  if (a === b || b >= lessonCount) return false;
  for (let i = 0; i < activityCount; i++) {
    if (int(minutes, i * lessonCount + a) > 0 && (b < int(firstOf, i) || b > int(lastOf, i))) return false;
    if (int(minutes, i * lessonCount + b) > 0 && (a < int(firstOf, i) || a > int(lastOf, i))) return false;
  }
  startStep();
  const soloBefore = soloOf(a) + soloOf(b);
  let late: f64 = 0;
  earlyChange = 0;
  for (let i = 0; i < activityCount; i++) {
    const inA = int(minutes, i * lessonCount + a);
    const inB = int(minutes, i * lessonCount + b);
    if (inA === inB) continue;
    if (withReviews) late -= lift(i);
    earlyChange += f64((inA - inB) * (b - a)) - gapWeight * f64(gapsOf(i));
    setMinutes(i, a, inB);
    setMinutes(i, b, inA);
    refreshActivity(i);
    earlyChange += gapWeight * f64(gapsOf(i));
  }
  let allowed =
    journalLength > 0 &&
    fits(a) &&
    fits(b) &&
    int(blocks, a) <= int(maxBlocks, a) &&
    int(blocks, b) <= int(maxBlocks, b);
  for (let k = journalLength - 2; allowed && k >= 0; k -= 2) {
    const cell = int(journal, k);
    if (cell >= 0) allowed = isInOrder(int(activityOf, cell));
  }
  if (!allowed) {
    undoStep();
    return false;
  }
  if (withReviews) {
    const length = journalLength;
    let before = -1;
    for (let k = 0; k < length; k += 2) {
      const cell = int(journal, k);
      if (cell < 0 || int(activityOf, cell) === before) continue;
      before = int(activityOf, cell);
      late += settle(before);
    }
  }
  penaltyChange = lateWeight * late + soloWeight * f64(soloOf(a) + soloOf(b) - soloBefore);
  return true;
}

function soloOf(l: i32): i32 {
  return int(strandsIn, l) === 1 ? 1 : 0;
}

function fits(l: i32): bool {
  return minutesFit(l) && int(strandsIn, l) <= int(maxStrands, l);
}

/** Whether an activity stands after what it rests on, before what rests on it, and keeps the run limit. */
function isInOrder(i: i32): bool {
  const first = int(firstAt, i);
  const done = int(doneAt, i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++)
    if (int(doneAt, int(preds, k)) > first) return false;
  for (let k = int(succStart, i); k < int(succStart, i + 1); k++) {
    const start = int(firstAt, int(succs, k));
    if (start !== never && start < done) return false;
  }
  return keepsRunLimit(minutes, i);
}

/** Takes out an activity's revisit and returns how late it was, weighted. */
function lift(i: i32): f64 {
  const r = int(reviewOf, i);
  if (r < 0) return 0;
  const late = latenessOf(r);
  if (int(reviewAt, r) !== never) setReview(r, never);
  return late;
}

/** Puts the revisit where it goes now and returns how late it is. */
function settle(i: i32): f64 {
  const r = int(reviewOf, i);
  if (r < 0) return 0;
  insertReview(r);
  return latenessOf(r);
}
