// A walk from the plan in the state: take some work out, put it back, keep the plan when it is better, or with luck when
// it is a little worse (annealing). It goes level by level, as the objective does: first U with P and E left free, then P
// with U held, then E with both held, then closeness to the last plan.

import { leastPenalty, leastUndone } from './bounds.ts';
import { chooseRuin } from './choose-ruin.ts';
import { listChunks } from './chunk-list.ts';
import { addWork, work } from './clock.ts';
import { coolHeats, heats, isKept, luckFrom } from './heats.ts';
import { copyReals, newInts, real } from './memory.ts';
import { moveMinutes } from './minute-moves.ts';
import { activityCount, hasLast, lessonCount, reviewCount } from './model.ts';
import { draw } from './random.ts';
import { improveReviews, recreate } from './recreate.ts';
import { firstDifference, isAlike, measureScore, newScore, scoreSize } from './score.ts';
import { keepPlan, never, restorePlan, setReview, startStep, undoStep } from './state.ts';
import { swapChunks } from './swap-round.ts';
import { leastRuin, minuteMoves, mostRuin, patience, returns, shareByLevel, swapShare } from './tuning.ts';

/** Times that work was taken out and put back, in all walks. */
export let rounds: i32 = 0;
/** The best plan since `startWalk`, and its score. */
export let ownMinutes: i32 = 0;
export let ownReviewAt: i32 = 0;
export let own: i32 = 0;
let current: i32 = 0;
let candidate: i32 = 0;
let level: i32 = 0;
let lastGain: f64 = 0;

export function createWalk(): void {
  rounds = 0;
  own = newScore();
  current = newScore();
  candidate = newScore();
  ownMinutes = newInts(activityCount * lessonCount);
  ownReviewAt = newInts(reviewCount);
}

/** Makes the plan in the state the best so far. */
export function startWalk(): void {
  measureScore(current);
  copyReals(own, current, scoreSize);
  keepPlan(ownMinutes, ownReviewAt);
}

/** Keeps the plan in the state if it is better than the best so far. */
export function keepIfBest(): void {
  measureScore(current);
  keepCurrent();
}

/** The same for a plan whose score is known; whether that is a gain at the level or before it. */
function keepCurrent(): bool {
  const at = firstDifference(current, own);
  if (at === 4 || real(current, at) > real(own, at)) return false;
  copyReals(own, current, scoreSize);
  keepPlan(ownMinutes, ownReviewAt);
  return at <= level;
}

function noteGain(): void {
  if (keepCurrent()) lastGain = work;
}

// with a last plan, what moved is only counted after the round
function onSwapGain(): void {
  if (!hasLast) noteGain();
}

/**
 * Walks until `work` reaches `end`, from the best plan so far, through the levels from `first` to `last`. Heats start
 * with the square of `warmth`; at a warmth of 1 the walk goes back to the best plan now and then. `shareOfU` of the work
 * at most is for level 0.
 */
export function walk(end: f64, first: i32, last: i32, warmth: f64, shareOfU: f64): void {
  const roundWork = 15 * activityCount;
  level = first - 1;
  let levelStart = work;
  let levelEnd = work;
  let round = 0;
  let returned = 0;
  while (work < end) {
    const isStuck = work - lastGain > patience(level) * (end - levelStart);
    if (level < last && (level < first || work >= levelEnd || isStuck || isLeast())) {
      level++;
      returned = 0;
      levelStart = work;
      lastGain = work;
      const share = level === last ? 1 : level === 0 ? shareOfU : shareByLevel(level);
      levelEnd = levelStart + (end - levelStart) * share;
      restorePlan(ownMinutes, ownReviewAt);
      // revisits only take room from work: they come back when P counts
      if (level === 0) for (let r = 0; r < reviewCount; r++) setReview(r, never);
      else if (level === 1) improveReviews();
      keepIfBest();
      continue;
    }
    round++;
    addWork(roundWork);
    const along = min(1, (work - levelStart) / ((levelEnd - levelStart) * 0.9));
    const mostReturns = warmth === 1 && (level === 1 || level === 2) ? returns : 0;
    if (returned < mostReturns && along * f64(returns + 1) >= f64(returned + 1)) {
      // a walk that has gone astray goes on from the best plan
      returned++;
      restorePlan(ownMinutes, ownReviewAt);
      measureScore(current);
    }
    coolHeats(level, warmth * (1 - along));
    if (level < 3 && draw() < swapShare(level)) {
      swapChunks(current, level, onSwapGain);
      measureScore(current);
      noteGain();
      continue;
    }
    startStep();
    const least = leastRuin(level);
    chooseRuin(least + (round % (mostRuin(level) - least + 1)), level);
    // drawn before, so that a plan that leaves too much undone is given up early
    const luck = luckFrom(draw());
    const mostUndone = real(current, 0) + real(heats, 0) * luck + 1e-7;
    if (!recreate(level, mostUndone, false)) {
      undoStep();
      continue;
    }
    measureScore(candidate);
    // the same again, most likely
    if (isAlike(candidate, current)) continue;
    if (!isKept(candidate, current, level, luck)) {
      undoStep();
      continue;
    }
    const before = current;
    current = candidate;
    candidate = before;
    if (level < 3) {
      listChunks();
      moveMinutes(current, real(heats, 0), level === 2 ? real(heats, 2) : Infinity, minuteMoves);
      if (hasLast) measureScore(current);
    }
    noteGain();
  }
  rounds += round;
}

function isLeast(): bool {
  if (level === 0) return real(own, 0) <= leastUndone + 1e-9;
  return level === 1 && real(own, 1) <= leastPenalty + 1e-9;
}
