// Puts back what a ruin took out, one activity at a time, each in its best place, in an order that changes from step to step.

import { insertActivity } from './insert-activity.ts';
import { insertReview, reviewFits } from './insert-review.ts';
import { noRoof, roof, setFactors, setPrices, setSquarePrice } from './inserter.ts';
import { fillInts, int, newReals, real, setInt, setReal } from './memory.ts';
import {
  activityCount,
  demandOf,
  lastOf,
  lateWeight,
  lessonCount,
  predStart,
  preds,
  reviewCount,
  reviewMinutes,
  reviewOf,
  succStart,
  succs,
  weightOf,
} from './model.ts';
import { around, draw, drawInteger } from './random.ts';
import {
  evenLesson,
  evenRoof,
  goesFirst,
  isHindered,
  isPicked,
  mostPicked,
  pickAgain,
  picked,
  pickedCount,
  ruinFrom,
  ruinUntil,
  soonLesson,
  soonReview,
} from './ruin.ts';
import {
  chunks,
  dueOf,
  journal,
  journalLength,
  never,
  removeActivity,
  reviewAt,
  setReview,
  sum,
} from './state.ts';
import {
  ejectShare,
  factorShare,
  failedFirstShare,
  heavyFirstShare,
  liftShare,
  mostSpill,
  noRoofShare,
  nudgeShare,
  nudges,
  priceShare,
  reviewsFirst,
  smallProduct,
  squareShare,
} from './tuning.ts';

let keys: i32 = 0;
/** What each activity that stands for good leaves undone, weighted, and their sum: it only grows while work goes back in. */
let lossOf: i32 = 0;
let loss: f64 = 0;

/** How often putting back has failed with each activity, and what the next failure weighs. */
let failures: i32 = 0;
let failure: f64 = 1;

export function createRecreate(): void {
  keys = newReals(activityCount);
  failures = newReals(activityCount);
  failure = 1;
  lossOf = newReals(activityCount);
}

/**
 * Takes out and puts back; false when the plan could not be made whole again. The caller owns the journal. `plain` puts
 * back in the order of the problem without trying anything odd. At `level` 0 the weights of P do not count, so that everything
 * goes in where there is room; before level 2 the lessons' order need not count either.
 */
export function recreate(level: i32, mostUndone: f64, plain: bool): bool {
  for (let k = 0; k < pickedCount; k++) removeActivity(int(picked, k));
  const withReviews = plain || level > 0;
  if (!plain && withReviews && draw() < liftShare) liftReviews();
  if (soonReview >= 0) bringForward();
  const reviewsGoFirst = !plain && draw() < reviewsFirst(level);
  const lowered = !plain && (evenLesson >= 0 || lowerRoof());
  if (!plain && evenLesson >= 0) setInt(roof, evenLesson, evenRoof);
  setSquarePrice(!plain && draw() < squareShare ? 10 ** (2 + 3.5 * draw()) : 0);
  if (plain) for (let i = 0; i < activityCount; i++) setReal(keys, i, f64(i));
  else drawKeys();
  if (reviewsGoFirst) improveReviews();
  if (plain) takeFactors(level);
  else drawFactors(level);
  const isSmall = activityCount * lessonCount <= smallProduct;
  setPrices(!plain && isSmall && level < 2 && draw() < priceShare);
  const carry = plain || draw() < 0.8;
  countLosses();
  for (let left = pickedCount; left > 0; left--) {
    const i = takeNext(left);
    const nudged = nudge(i, pickedCount);
    const spill = plain ? 0 : drawInteger(1, mostSpill);
    let whole = insertActivity(i, carry, spill);
    if (nudged >= 0) setInt(roof, nudged, noRoof);
    setInt(isHindered, i, lowered || nudged >= 0 ? 1 : 0);
    if (!whole && (plain || draw() < ejectShare)) {
      // what rests on it makes way, and comes back after it
      left = ejectSuccessors(i, i, left);
      whole = insertActivity(i, carry, spill);
    }
    // what is hindered gets another go at the end
    if (int(isHindered, i) === 0) countLoss(i, 1);
    if (!whole || loss > mostUndone) {
      countFailure(i);
      if (lowered) fillInts(roof, lessonCount, noRoof);
      return false;
    }
    const r = int(reviewOf, i);
    if (reviewsGoFirst && r >= 0) insertReview(r);
  }
  if (lowered) fillInts(roof, lessonCount, noRoof);
  setSquarePrice(0);
  if (level > 0) takeFactors(level);
  topUp();
  if (loss > mostUndone) return false;
  if (withReviews) improveReviews();
  return true;
}

/** Puts the revisit that work makes way for into its lesson. */
function bringForward(): void {
  if (int(reviewAt, soonReview) !== never) setReview(soonReview, never);
  if (reviewFits(soonLesson, int(reviewMinutes, soonReview))) setReview(soonReview, soonLesson);
}

/** The weights of P as they are; at level 0 they do not count. */
function takeFactors(level: i32): void {
  const factor: f64 = level === 0 ? 0 : 1;
  setFactors(factor, factor, factor);
}

/** What this round makes of the weights of P. */
function drawFactors(level: i32): void {
  if (level === 0) {
    takeFactors(0);
    return;
  }
  const split = draw() < factorShare ? noughtOr(draw()) : 1;
  const solo = draw() < factorShare ? noughtOr(2 * draw() - 0.5) : 1;
  setFactors(split, solo, 1);
}

function noughtOr(factor: f64): f64 {
  return draw() < 0.5 ? 0 : factor;
}

/** Gives what came back unfinished another go without the roofs. */
function topUp(): void {
  for (let k = pickedCount - 1; k >= 0; k--) {
    const i = int(picked, k);
    if (int(isHindered, i) === 0 || int(sum, i) >= int(demandOf, i)) continue;
    removeActivity(i);
    insertActivity(i, false, 0);
  }
  for (let k = pickedCount - 1; k >= 0; k--)
    if (int(isHindered, int(picked, k)) === 1) countLoss(int(picked, k), 1);
}

/**
 * Takes out everything placed that rests on `base`, directly or not, and puts it into the queue, which is the first
 * `left` of the picked with `current`, now being placed, as its last. Returns the new `left`.
 */
function ejectSuccessors(base: i32, current: i32, left: i32): i32 {
  let queue = left;
  for (let k = int(succStart, base); k < int(succStart, base + 1); k++) {
    const j = int(succs, k);
    if (int(chunks, j) === 0 || int(isPicked, j) === 1 || pickedCount >= mostPicked) continue;
    countLoss(j, 0);
    removeActivity(j);
    setReal(keys, j, 1);
    pickAgain(j, queue, current);
    queue = ejectSuccessors(j, current, queue + 1);
  }
  return queue;
}

/** Takes out revisits that stand in the lessons of the ruin. */
function liftReviews(): void {
  for (let r = 0; r < reviewCount; r++) {
    const at = int(reviewAt, r);
    if (at >= ruinFrom && at <= ruinUntil && draw() < 0.7) setReview(r, never);
  }
}

/** Places every revisit that is not placed and moves late ones forward, from a random one on. */
export function improveReviews(): void {
  if (reviewCount === 0 || lateWeight === 0) return;
  const start = drawInteger(0, reviewCount - 1);
  for (let k = 0; k < reviewCount; k++) {
    const r = around(start, k, reviewCount);
    const due = dueOf(r);
    const at = int(reviewAt, r);
    if (due >= lessonCount || at === due) continue;
    if (at !== never) setReview(r, never);
    insertReview(r);
  }
}

/** Counts that putting back ended with an activity for which there was no room; later failures weigh more. */
function countFailure(i: i32): void {
  setReal(failures, i, real(failures, i) + failure);
  failure *= 1.01;
  if (failure < 1e100) return;
  for (let j = 0; j < activityCount; j++) setReal(failures, j, real(failures, j) / failure);
  failure = 1;
}

/** Now and then closes lessons or allows less in them than would fit; whether it did. */
function lowerRoof(): bool {
  if (draw() < noRoofShare) return false;
  const share = draw() * 0.35;
  for (let l = 0; l < lessonCount; l++) {
    if (draw() >= share) continue;
    setInt(roof, l, draw() < 0.4 ? 0 : drawInteger(3, 15));
  }
  return true;
}

/** Starts from what all that is not picked leaves undone. */
function countLosses(): void {
  loss = 0;
  for (let i = 0; i < activityCount; i++) {
    const now = real(weightOf, i) * f64((1 - int(isPicked, i)) * (int(demandOf, i) - int(sum, i)));
    setReal(lossOf, i, now);
    loss += now;
  }
}

/** Counts what an activity leaves undone now, or no longer counts it with a `share` of 0. */
function countLoss(i: i32, share: f64): void {
  const now = share * real(weightOf, i) * f64(int(demandOf, i) - int(sum, i));
  loss += now - real(lossOf, i);
  setReal(lossOf, i, now);
}

/**
 * Now and then allows an activity a little less in a lesson than it had there: the lesson, or −1. What it had is read
 * from the journal, where its removal stands.
 */
function nudge(i: i32, count: i32): i32 {
  if (draw() >= min(nudgeShare, nudges / f64(count))) return -1;
  let seen = 0;
  let lesson = -1;
  let had = 0;
  for (let k = 0; k < journalLength; k += 2) {
    const cell = int(journal, k);
    const before = int(journal, k + 1);
    if (before === 0 || cell < i * lessonCount || cell >= (i + 1) * lessonCount) continue;
    seen++;
    if (draw() * f64(seen) >= 1) continue;
    lesson = cell - i * lessonCount;
    had = before;
  }
  if (lesson < 0 || int(roof, lesson) < noRoof) return -1;
  setInt(roof, lesson, had - drawInteger(1, 4));
  return lesson;
}

/** An order for the picked: at random, or heavy, long, urgent, early-listed or often failed first. */
function drawKeys(): void {
  const way = draw() < failedFirstShare ? 6 : draw() < heavyFirstShare ? 0 : drawInteger(0, 5);
  for (let k = 0; k < pickedCount; k++) {
    const i = int(picked, k);
    const noise = 0.76 + 0.48 * draw();
    let key = noise;
    if (way === 0) key = -real(weightOf, i) * noise;
    else if (way === 1) key = -f64(int(demandOf, i)) * noise;
    else if (way === 2) key = f64(int(lastOf, i) + 1) * noise;
    else if (way === 3) key = f64(i) * noise;
    else if (way === 6) key = -(real(failures, i) + 0.1 * failure) * noise;
    setReal(keys, i, int(goesFirst, i) === 1 ? -Infinity : key);
  }
}

/** Removes from the first `left` picked the one of least key whose picked predecessors are all gone, and returns it. */
function takeNext(left: i32): i32 {
  let best = -1;
  for (let k = 0; k < left; k++) {
    const i = int(picked, k);
    if (best >= 0 && real(keys, i) >= real(keys, int(picked, best))) continue;
    if (isFree(i)) best = k;
  }
  const i = int(picked, best);
  setInt(picked, best, int(picked, left - 1));
  setInt(picked, left - 1, i);
  setInt(isPicked, i, 0);
  return i;
}

function isFree(i: i32): bool {
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++)
    if (int(isPicked, int(preds, k)) === 1) return false;
  return true;
}
