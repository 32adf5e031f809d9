// Makes a move when it is worth it. What can be told beforehand is: most moves are given up without touching the plan.

import { cells, inLesson, lessonSize, listChunks } from './chunk-list.ts';
import { isWorth } from './heats.ts';
import { insertReview } from './insert-review.ts';
import { addInt, int, setInt } from './memory.ts';
import {
  activityCount,
  gapWeight,
  lateWeight,
  lessonCount,
  maxStrands,
  predStart,
  preds,
  reviewOf,
  soloWeight,
  splitWeight,
  strandCount,
  strandOf,
  succStart,
  succs,
} from './model.ts';
import {
  isGone,
  isNew,
  moving,
  movingCount,
  movingFrom,
  movingMinutes,
  movingPlace,
  movingTo,
} from './moving.ts';
import { keepsRunLimit } from './run-programme.ts';
import {
  doneAt,
  firstAt,
  gapsOf,
  latenessOf,
  minutes,
  never,
  refreshActivity,
  reviewAt,
  setMinutes,
  setReview,
  startStep,
  strandBlocks,
  strandsIn,
  undoStep,
} from './state.ts';

/** What the last move that was made changed in P, and in E with the gaps that count beside it. */
export let penaltyChange: f64 = 0;
export let earlyChange: f64 = 0;
/** Stands for a lesson with too many strands. */
const tooMany: i32 = 1 << 10;

/** Makes the move if it is allowed and worth it at this level; false when not, with everything as it was. */
export function makeMove(level: i32): bool {
  const solo = soloChange();
  if (solo >= tooMany) return false;
  let early = 0;
  let lateness: f64 = 0;
  let isLateKnown = true;
  const withReviews = level > 0;
  for (let k = 0; k < movingCount; k++) {
    early += int(movingMinutes, k) * (int(movingTo, k) - int(movingFrom, k));
    const r = int(reviewOf, int(moving, k));
    if (!withReviews || r < 0 || int(doneAt, int(moving, k)) === never) continue;
    isLateKnown = false;
    lateness += latenessOf(r);
  }
  penaltyChange = soloWeight * f64(solo) + splitWeight * f64(chunkChange());
  earlyChange = f64(early);
  const isKnown = isLateKnown && gapWeight === 0;
  // at best no revisit is late any more; at E few moves are worth the trouble that earn nothing beforehand
  const least = withReviews ? penaltyChange - lateWeight * lateness : 0;
  if (
    least > 1e-9
      ? !isWorth(least, 1)
      : least > -1e-9 && (isKnown || (level === 2 && gapWeight === 0)) && !isWorth(earlyChange, 2)
  )
    return false;
  startStep();
  const late = shiftAll(withReviews);
  for (let k = 0; k < movingCount; k++)
    if (!isInOrder(int(moving, k))) {
      undoStep();
      return false;
    }
  if (withReviews) penaltyChange += lateWeight * (late + settleAll());
  if (!isKnown && !isChangeWorth(level)) {
    undoStep();
    return false;
  }
  relist();
  return true;
}

/** Whether a change of P, or where P stays one of E, is worth it with luck. */
export function isChangeWorth(level: i32): bool {
  return level > 0 && abs(penaltyChange) > 1e-7 ? isWorth(penaltyChange, 1) : isWorth(earlyChange, 2);
}

/** Takes out the revisits of what moves and moves it; how much less late revisits are for it, weighted. */
function shiftAll(withReviews: bool): f64 {
  let late: f64 = 0;
  for (let k = 0; k < movingCount; k++) {
    const i = int(moving, k);
    const row = i * lessonCount;
    const m = int(movingMinutes, k);
    const from = int(movingFrom, k);
    const to = int(movingTo, k);
    if (withReviews) late -= lift(i);
    earlyChange -= gapWeight * f64(gapsOf(i));
    setMinutes(i, from, int(minutes, row + from) - m);
    setMinutes(i, to, int(minutes, row + to) + m);
    refreshActivity(i);
    earlyChange += gapWeight * f64(gapsOf(i));
  }
  return late;
}

function settleAll(): f64 {
  let late: f64 = 0;
  for (let k = 0; k < movingCount; k++) late += settle(int(moving, k));
  return late;
}

/** How many chunks more there would be. */
function chunkChange(): i32 {
  let change = 0;
  for (let k = 0; k < movingCount; k++) change += int(isNew, k) - int(isGone, k);
  return change;
}

/** How many more lessons would have one strand only; `tooMany` when one would have more than it may. */
function soloChange(): i32 {
  let change = 0;
  for (let k = 0; k < movingCount; k++) {
    const strand = int(strandOf, int(moving, k));
    change += leaveStrand(int(movingFrom, k), strand, int(isGone, k));
    change += joinStrand(int(movingTo, k), strand, int(isNew, k));
  }
  for (let k = 0; k < movingCount; k++)
    if (int(strandsIn, int(movingTo, k)) > int(maxStrands, int(movingTo, k))) change = tooMany;
  for (let k = 0; k < movingCount; k++) {
    const strand = int(strandOf, int(moving, k));
    joinStrand(int(movingFrom, k), strand, int(isGone, k));
    leaveStrand(int(movingTo, k), strand, int(isNew, k));
  }
  return change;
}

/** Counts `by` blocks of a strand less in a lesson, 0 or 1; the change in lessons with one strand only. Without branches. */
function leaveStrand(l: i32, strand: i32, by: i32): i32 {
  const left = addInt(strandBlocks, l * strandCount + strand, -by);
  const change = by & i32(left === 0);
  const strands = addInt(strandsIn, l, -change);
  return i32(strands === 1) - i32(strands + change === 1);
}

function joinStrand(l: i32, strand: i32, by: i32): i32 {
  const there = addInt(strandBlocks, l * strandCount + strand, by);
  const change = by & i32(there === 1);
  const strands = addInt(strandsIn, l, change);
  return i32(strands === 1) - i32(strands - change === 1);
}

/** Keeps the list of chunks up to date. */
function relist(): void {
  for (let k = 0; k < movingCount; k++) {
    const i = int(moving, k);
    const gone = int(isGone, k);
    if (int(isNew, k) !== gone) {
      listChunks();
      return;
    }
    if (gone === 0) continue;
    const place = int(movingPlace, k);
    const to = int(movingTo, k);
    const neighbours = inLesson + ((int(movingFrom, k) * activityCount) << 2);
    const last = addInt(lessonSize, int(movingFrom, k), -1);
    let at = 0;
    while (int(neighbours, at) !== place) at++;
    setInt(neighbours, at, int(neighbours, last));
    setInt(inLesson, to * activityCount + addInt(lessonSize, to, 1) - 1, place);
    setInt(cells, place, i * lessonCount + to);
  }
}

/** Whether an activity stands after what it rests on, before what rests on it, and keeps the run limit. */
export function isInOrder(i: i32): bool {
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
export function lift(i: i32): f64 {
  const r = int(reviewOf, i);
  if (r < 0) return 0;
  const late = latenessOf(r);
  if (int(reviewAt, r) !== never) setReview(r, never);
  return late;
}

/** Puts the revisit where it goes now and returns how late it is. */
export function settle(i: i32): f64 {
  const r = int(reviewOf, i);
  if (r < 0) return 0;
  insertReview(r);
  return latenessOf(r);
}

/** Says what a move made otherwise has changed. */
export function setChanges(penalty: f64, early: f64): void {
  penaltyChange = penalty;
  earlyChange = early;
}
