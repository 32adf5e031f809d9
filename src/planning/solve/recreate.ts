// Puts back what a ruin took out, one activity at a time, each in its best place, in an order that changes from step to step.

import { type Random, randomInteger } from '#core';
import { type Inserter, insertActivity } from './insert-activity.ts';
import { insertReview } from './insert-review.ts';
import type { Model } from './model.ts';
import type { Ruin } from './ruin.ts';
import { dueOf, never, removeActivity, type State, setReview } from './state.ts';

const noRoof = 1 << 10;

/** Takes out and puts back; false when the plan could not be made whole again. The caller owns the journal. */
export function recreate(
  model: Model,
  state: State,
  random: Random,
  inserter: Inserter,
  ruin: Ruin,
  keys: Float64Array,
): boolean {
  for (let k = 0; k < ruin.pickedCount; k++) removeActivity(model, state, ruin.picked[k] ?? 0);
  if (random.next() < 0.6) liftReviews(model, state, random, ruin);
  const reviewsFirst = random.next() < 0.5;
  lowerRoof(model, random, inserter);
  drawKeys(model, random, ruin, keys);
  if (reviewsFirst) improveReviews(model, state, random);
  const carry = random.next() < 0.7;
  for (let left = ruin.pickedCount; left > 0; left--) {
    const i = takeNext(model, ruin, keys, left);
    if (!insertActivity(model, state, inserter, i, carry)) return false;
    const r = model.reviewOf[i] ?? -1;
    if (reviewsFirst && r >= 0) insertReview(model, state, r);
  }
  inserter.roof.fill(noRoof);
  improveReviews(model, state, random);
  return true;
}

/** Takes out revisits that stand in the lessons of the ruin. */
function liftReviews(model: Model, state: State, random: Random, ruin: Ruin): void {
  for (let r = 0; r < model.reviewCount; r++) {
    const at = state.reviewAt[r] ?? never;
    if (at >= ruin.from && at <= ruin.until && random.next() < 0.7) setReview(model, state, r, never);
  }
}

/** Places every revisit that is not placed and moves late ones forward, from a random one on. */
function improveReviews(model: Model, state: State, random: Random): void {
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

/** Now and then closes a lesson or allows less in it than would fit. */
function lowerRoof(model: Model, random: Random, inserter: Inserter): void {
  inserter.roof.fill(noRoof);
  if (random.next() < 0.4) return;
  const share = random.next() * 0.35;
  for (let l = 0; l < model.lessonCount; l++) {
    if (random.next() >= share) continue;
    inserter.roof[l] = random.next() < 0.4 ? 0 : randomInteger(random, 3, 15);
  }
}

/** An order for the picked: at random, or heavy, long, urgent or early-listed first. */
function drawKeys(model: Model, random: Random, ruin: Ruin, keys: Float64Array): void {
  const way = randomInteger(random, 0, 5);
  for (let k = 0; k < ruin.pickedCount; k++) {
    const i = ruin.picked[k] ?? 0;
    const noise = 0.7 + 0.6 * random.next();
    if (way === 0) keys[i] = -(model.weight[i] ?? 0) * noise;
    else if (way === 1) keys[i] = -(model.demand[i] ?? 0) * noise;
    else if (way === 2) keys[i] = ((model.last[i] ?? 0) + 1) * noise;
    else if (way === 3) keys[i] = i * noise;
    else keys[i] = noise;
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
  isPicked[i] = 0;
  return i;
}
