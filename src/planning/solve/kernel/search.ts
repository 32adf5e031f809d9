// The search: take some work out, put it back, keep the plan when it is better, or with luck when it is a little worse
// (annealing). It goes level by level, as the objective does: first U with P and E left free, then P with U held, then
// E with both held, then closeness to the last plan.

import { createBounds, findBounds, leastPenalty, leastUndone } from './bounds.ts';
import { chooseRuin } from './choose-ruin.ts';
import { createChunkList, listChunks } from './chunk-list.ts';
import { coolHeats, createHeats, heats, isKept, luckFrom } from './heats.ts';
import { addWork, clearInserter, createInserter, work } from './inserter.ts';
import { createLastPlan, loadLastPlan } from './last-plan.ts';
import { copyInts, copyReals, int, newInts, real } from './memory.ts';
import { moveMinutes } from './minute-moves.ts';
import { activityCount, hasLast, lessonCount, reviewCount } from './model.ts';
import { createMoving } from './moving.ts';
import { draw } from './random.ts';
import { createRecreate, improveReviews, recreate } from './recreate.ts';
import { clearRuin, createRuin, pick, setRuinLessons } from './ruin.ts';
import { createRunProgramme } from './run-programme.ts';
import { firstDifference, measureScore, newScore, scoreSize } from './score.ts';
import {
  chunks,
  clearState,
  createState,
  keepPlan,
  never,
  restorePlan,
  setReview,
  startStep,
  undoStep,
} from './state.ts';
import { swapChunks } from './swap-round.ts';
import { leastRuin, minuteMoves, mostRuin, patience, returns, shareByLevel, swapShare } from './tuning.ts';

/** How long one search may be before another start is worth more, by activity and lesson. */
const stepsPerCell: i32 = 148;
/** Work in one step of the budget. */
const workPerStep: i32 = 1000;
/** First plans made from nothing, each in another order; the best of them is searched from. */
const starts: i32 = 8;
/** Work of a move of single minutes. */
const minuteMoveWork: i32 = 8;

export let rounds: i32 = 0;
// the best of all searches, and of the one at hand
export let bestMinutes: i32 = 0;
export let bestReviewAt: i32 = 0;
export let best: i32 = 0;
let ownMinutes: i32 = 0;
let ownReviewAt: i32 = 0;
let own: i32 = 0;
let blankMinutes: i32 = 0;
let blankReviewAt: i32 = 0;
let current: i32 = 0;
let candidate: i32 = 0;
let level: i32 = -1;
let lastGain: f64 = 0;

/**
 * Searches for at most about `steps` × 1000 of work; the same arguments give the same plan. A small
 * problem is searched several times from the start rather than once for long.
 */
export function search(steps: i32): void {
  create();
  rounds = 0;
  const longest = max(4500, stepsPerCell * activityCount * lessonCount);
  const times = max(1, steps / longest);
  for (let n = 0; n < times; n++) {
    searchOnce(f64(steps) / f64(times));
    const at = n === 0 ? 0 : firstDifference(own, best);
    if (n > 0 && (at === 4 || real(own, at) > real(best, at))) continue;
    copyReals(best, own, scoreSize);
    copyInts(bestMinutes, ownMinutes, activityCount * lessonCount);
    copyInts(bestReviewAt, ownReviewAt, reviewCount);
  }
}

function create(): void {
  createState();
  createInserter();
  createRuin();
  createRecreate();
  createChunkList();
  createMoving();
  createHeats();
  createLastPlan();
  createBounds();
  createRunProgramme();
  best = newScore();
  own = newScore();
  current = newScore();
  candidate = newScore();
  bestMinutes = newInts(activityCount * lessonCount);
  bestReviewAt = newInts(reviewCount);
  ownMinutes = newInts(activityCount * lessonCount);
  ownReviewAt = newInts(reviewCount);
  blankMinutes = newInts(activityCount * lessonCount);
  blankReviewAt = newInts(reviewCount);
}

function keepIfBest(): bool {
  const at = firstDifference(current, own);
  if (at === 4 || real(current, at) > real(own, at)) return false;
  copyReals(own, current, scoreSize);
  keepPlan(ownMinutes, ownReviewAt);
  return at <= level;
}

function noteGain(): void {
  if (keepIfBest()) lastGain = work;
}

// with a last plan, what moved is only counted after the round
function onSwapGain(): void {
  if (!hasLast) noteGain();
}

function searchOnce(steps: f64): void {
  clearState();
  clearInserter();
  keepPlan(blankMinutes, blankReviewAt);
  if (hasLast) loadLastPlan();
  measureScore(current);
  copyReals(own, current, scoreSize);
  keepPlan(ownMinutes, ownReviewAt);
  level = 0;
  for (let n = 0; n < starts && lessonCount > 0; n++) {
    if (n > 0) restorePlan(blankMinutes, blankReviewAt);
    placeAll(n);
    measureScore(current);
    keepIfBest();
  }
  const budget = lessonCount > 0 && activityCount > 0 ? steps * f64(workPerStep) : 0;
  const roundWork = 30 * activityCount + 22 * lessonCount + 100;
  const lastLevel = hasLast ? 3 : 2;
  findBounds();
  level = -1;
  lastGain = 0;
  let levelStart: f64 = 0;
  let levelEnd: f64 = 0;
  let round = 0;
  let returned = 0;
  while (work < budget) {
    const stuck = work - lastGain > patience * (budget - levelStart);
    if (level < lastLevel && (work >= levelEnd || stuck || isLeast())) {
      level++;
      returned = 0;
      levelStart = work;
      lastGain = work;
      const share = level === lastLevel ? 1 : shareByLevel(level);
      levelEnd = levelStart + (budget - levelStart) * share;
      restorePlan(ownMinutes, ownReviewAt);
      // revisits only take room from work: they come back when P counts
      if (level === 0) for (let r = 0; r < reviewCount; r++) setReview(r, never);
      else if (level === 1) improveReviews();
      measureScore(current);
      keepIfBest();
      continue;
    }
    round++;
    addWork(roundWork);
    const along = min(1, (work - levelStart) / ((levelEnd - levelStart) * 0.9));
    if ((level === 1 || level === 2) && returned < returns && along * f64(returns + 1) >= f64(returned + 1)) {
      // a walk that has gone astray goes on from the best plan
      returned++;
      restorePlan(ownMinutes, ownReviewAt);
      measureScore(current);
    }
    coolHeats(level, 1 - along);
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
      addWork(minuteMoves * minuteMoveWork + activityCount * lessonCount);
    }
    noteGain();
  }
  rounds += round;
}

function isLeast(): bool {
  if (level < 0) return true;
  if (level === 0) return real(own, 0) <= leastUndone + 1e-9;
  return level === 1 && real(own, 1) <= leastPenalty + 1e-9;
}

/** A first plan: everything that does not stand yet, put in one after the other. */
function placeAll(start: i32): void {
  clearRuin();
  for (let i = 0; i < activityCount; i++) if (int(chunks, i) === 0) pick(i);
  setRuinLessons(0, -1);
  startStep();
  if (!recreate(start % 2, Infinity, start < 2)) undoStep();
}
