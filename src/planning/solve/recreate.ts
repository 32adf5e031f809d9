// Puts back what a ruin took out, one activity at a time, each in its best place, in an order that changes from step to step.

import { type Random, randomInteger } from '#core';
import { insertActivity } from './insert-activity.ts';
import { insertReview } from './insert-review.ts';
import type { Inserter } from './inserter.ts';
import type { Model } from './model.ts';
import type { Ruin } from './ruin.ts';
import { dueOf, never, removeActivity, type State, setReview } from './state.ts';
import { tuning } from './tuning.ts';

const noRoof = 1 << 10;

/**
 * Takes out and puts back; false when the plan could not be made whole again. The caller owns the journal. `plain` puts
 * back in the order of the problem without trying anything odd. At `level` 0 the weights of P do not count, so that everything
 * goes in where there is room; before level 2 the lessons' order need not count either.
 */
export function recreate(
  model: Model,
  state: State,
  random: Random,
  inserter: Inserter,
  ruin: Ruin,
  keys: Float64Array,
  level: number,
  mostUndone: number,
  plain = false,
): boolean {
  for (let k = 0; k < ruin.pickedCount; k++) removeActivity(model, state, ruin.picked[k] ?? 0);
  const withReviews = plain || level > 0;
  if (!plain && withReviews && random.next() < 0.6) liftReviews(model, state, random, ruin);
  const reviewsFirst =
    !plain &&
    random.next() < (level === 0 ? 0 : level === 1 ? tuning.reviewsFirstAtP : tuning.reviewsFirstAtE);
  const lowered = !plain && lowerRoof(model, random, inserter);
  inserter.squarePrice = !plain && random.next() < tuning.squareShare ? 10 ** (2 + 3.5 * random.next()) : 0;
  if (plain) for (let i = 0; i < model.activityCount; i++) keys[i] = i;
  else drawKeys(model, random, ruin, keys);
  if (reviewsFirst) improveReviews(model, state, random);
  setFactors(random, inserter, level, plain);
  setPrices(random, inserter, level, plain || model.activityCount * model.lessonCount > tuning.smallProduct);
  const carry = plain || random.next() < 0.8;
  for (let left = ruin.pickedCount; left > 0; left--) {
    const i = takeNext(model, ruin, keys, left);
    const nudged = nudge(model, state, random, inserter, i, ruin.pickedCount);
    let whole = insertActivity(model, state, inserter, i, carry);
    if (nudged >= 0) inserter.roof[nudged] = noRoof;
    ruin.isHindered[i] = lowered || nudged >= 0 ? 1 : 0;
    if (!whole && (plain || random.next() < tuning.ejectShare)) {
      // what rests on it makes way, and comes back after it
      left = ejectSuccessors(model, state, ruin, keys, i, i, left);
      whole = insertActivity(model, state, inserter, i, carry);
    }
    if (!whole) {
      if (lowered) inserter.roof.fill(noRoof);
      return false;
    }
    const r = model.reviewOf[i] ?? -1;
    if (reviewsFirst && r >= 0) insertReview(model, state, r);
  }
  if (lowered) inserter.roof.fill(noRoof);
  inserter.squarePrice = 0;
  if (level > 0) setFactors(random, inserter, level, true);
  topUp(model, state, inserter, ruin);
  if (leftUndone(model, state) > mostUndone) return false;
  if (withReviews) improveReviews(model, state, random);
  return true;
}

/** What this round makes of the weights of P. */
function setFactors(random: Random, inserter: Inserter, level: number, plain: boolean): void {
  const odd = !plain && level > 0;
  inserter.splitFactor =
    level === 0 ? 0 : odd && random.next() < tuning.factorShare ? noughtOr(random, random.next()) : 1;
  inserter.soloFactor =
    level === 0
      ? 0
      : odd && random.next() < tuning.factorShare
        ? noughtOr(random, 2 * random.next() - 0.5)
        : 1;
  inserter.lateFactor = level === 0 ? 0 : 1;
}

const noughtOr = (random: Random, factor: number): number => (random.next() < 0.5 ? 0 : factor);

/** Where a minute is dear this time: later, as in E, or at random while E is still free. */
function setPrices(random: Random, inserter: Inserter, level: number, plain: boolean): void {
  const { lessonPrice, leastPrice } = inserter;
  const odd = !plain && level < 2 && random.next() < tuning.priceShare;
  if (!odd && !inserter.hasOddPrices) return;
  inserter.hasOddPrices = odd;
  for (let l = lessonPrice.length - 1; l >= 0; l--) {
    const price = odd ? lessonPrice.length * random.next() : l;
    lessonPrice[l] = price;
    leastPrice[l] = l + 1 < lessonPrice.length ? Math.min(price, leastPrice[l + 1] ?? price) : price;
  }
}

/** Gives what came back unfinished another go without the roofs. */
function topUp(model: Model, state: State, inserter: Inserter, ruin: Ruin): void {
  for (let k = ruin.pickedCount - 1; k >= 0; k--) {
    const i = ruin.picked[k] ?? 0;
    if (ruin.isHindered[i] === 0 || (state.sum[i] ?? 0) >= (model.demand[i] ?? 0)) continue;
    removeActivity(model, state, i);
    insertActivity(model, state, inserter, i, false);
  }
}

/**
 * Takes out everything placed that rests on `of`, directly or not, and puts it into the queue, which is the first
 * `left` of the picked with `current`, now being placed, as its last. Returns the new `left`.
 */
function ejectSuccessors(
  model: Model,
  state: State,
  ruin: Ruin,
  keys: Float64Array,
  of: number,
  current: number,
  left: number,
): number {
  const { picked, isPicked } = ruin;
  let queue = left;
  for (const j of model.succs[of] ?? []) {
    if ((state.chunks[j] ?? 0) === 0 || isPicked[j] === 1 || ruin.pickedCount >= picked.length) continue;
    removeActivity(model, state, j);
    isPicked[j] = 1;
    keys[j] = 1;
    picked[ruin.pickedCount++] = picked[queue] ?? 0;
    picked[queue] = current;
    picked[queue - 1] = j;
    queue = ejectSuccessors(model, state, ruin, keys, j, current, queue + 1);
  }
  return queue;
}

/** Takes out revisits that stand in the lessons of the ruin. */
function liftReviews(model: Model, state: State, random: Random, ruin: Ruin): void {
  for (let r = 0; r < model.reviewCount; r++) {
    const at = state.reviewAt[r] ?? never;
    if (at >= ruin.from && at <= ruin.until && random.next() < 0.7) setReview(model, state, r, never);
  }
}

/** Places every revisit that is not placed and moves late ones forward, from a random one on. */
export function improveReviews(model: Model, state: State, random: Random): void {
  const { reviewCount, lessonCount } = model;
  if (reviewCount === 0 || model.lateWeight === 0) return;
  const start = randomInteger(random, 0, reviewCount - 1);
  for (let k = 0; k < reviewCount; k++) {
    const r = start + k < reviewCount ? start + k : start + k - reviewCount;
    const due = dueOf(model, state, r);
    const at = state.reviewAt[r] ?? never;
    if (due >= lessonCount || at === due) continue;
    if (at !== never) setReview(model, state, r, never);
    insertReview(model, state, r);
  }
}

/** Now and then closes lessons or allows less in them than would fit; whether it did. */
function lowerRoof(model: Model, random: Random, inserter: Inserter): boolean {
  if (random.next() < tuning.noRoofShare) return false;
  const share = random.next() * 0.35;
  for (let l = 0; l < model.lessonCount; l++) {
    if (random.next() >= share) continue;
    inserter.roof[l] = random.next() < 0.4 ? 0 : randomInteger(random, 3, 15);
  }
  return true;
}

function leftUndone(model: Model, state: State): number {
  let undone = 0;
  for (let i = 0; i < model.activityCount; i++)
    undone += (model.weight[i] ?? 0) * ((model.demand[i] ?? 0) - (state.sum[i] ?? 0));
  return undone;
}

/**
 * Now and then allows an activity a little less in a lesson than it had there: the lesson, or −1. What it had is read
 * from the journal, where its removal stands.
 */
function nudge(
  model: Model,
  state: State,
  random: Random,
  inserter: Inserter,
  i: number,
  picked: number,
): number {
  if (random.next() >= Math.min(tuning.nudgeShare, tuning.nudges / picked)) return -1;
  const { lessonCount } = model;
  let seen = 0;
  let lesson = -1;
  let minutes = 0;
  for (let k = 0; k < state.journalLength; k += 2) {
    const cell = state.journal[k] ?? 0;
    const before = state.journal[k + 1] ?? 0;
    if (before === 0 || cell < i * lessonCount || cell >= (i + 1) * lessonCount) continue;
    seen++;
    if (random.next() * seen >= 1) continue;
    lesson = cell - i * lessonCount;
    minutes = before;
  }
  if (lesson < 0 || (inserter.roof[lesson] ?? 0) < noRoof) return -1;
  inserter.roof[lesson] = minutes - randomInteger(random, 1, 4);
  return lesson;
}

/** An order for the picked: at random, or heavy, long, urgent or early-listed first. */
function drawKeys(model: Model, random: Random, ruin: Ruin, keys: Float64Array): void {
  const way = random.next() < tuning.heavyFirstShare ? 0 : randomInteger(random, 0, 5);
  for (let k = 0; k < ruin.pickedCount; k++) {
    const i = ruin.picked[k] ?? 0;
    const noise = 0.7 + 0.6 * random.next();
    if (way === 0) keys[i] = -(model.weight[i] ?? 0) * noise;
    else if (way === 1) keys[i] = -(model.demand[i] ?? 0) * noise;
    else if (way === 2) keys[i] = ((model.last[i] ?? 0) + 1) * noise;
    else if (way === 3) keys[i] = i * noise;
    else keys[i] = noise;
    if (ruin.goesFirst[i] === 1) keys[i] = Number.NEGATIVE_INFINITY;
  }
}

/** Removes from the picked the one of least key whose picked predecessors are all gone, and returns it. */
function takeNext(model: Model, ruin: Ruin, keys: Float64Array, left: number): number {
  const { picked, isPicked } = ruin;
  let best = -1;
  for (let k = 0; k < left; k++) {
    const i = picked[k] ?? 0;
    if (best >= 0 && (keys[i] ?? 0) >= (keys[picked[best] ?? 0] ?? 0)) continue;
    let free = true;
    for (const p of model.preds[i] ?? []) if (isPicked[p] === 1) free = false;
    if (free) best = k;
  }
  const i = picked[best] ?? 0;
  picked[best] = picked[left - 1] ?? 0;
  picked[left - 1] = i;
  isPicked[i] = 0;
  return i;
}
