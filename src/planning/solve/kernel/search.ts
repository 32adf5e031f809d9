// The search. From nothing: a few short walks give plans that are crossed, each cross walks a short while, and the best
// plan walks on to the end. This is a memetic algorithm after P. Moscato and of the kind of T. Vidal et al., Operations
// Research 60 (2012) 611-624 (from memory); long walks alone mostly end in the surroundings that they fell into early.

import { createBounds, findBounds } from './bounds.ts';
import { createChunkList } from './chunk-list.ts';
import { startClock, work } from './clock.ts';
import { cross } from './cross.ts';
import { createHeats } from './heats.ts';
import { clearInserter, createInserter } from './inserter.ts';
import { createLastPlan, loadLastPlan } from './last-plan.ts';
import { copyInts, copyReals, int, newInts } from './memory.ts';
import { activityCount, hasLast, lessonCount, reviewCount } from './model.ts';
import { createMoving } from './moving.ts';
import {
  admit,
  bestMember,
  createPopulation,
  drawMember,
  drawOther,
  isUndoneSettled,
  keepMember,
  restoreMember,
} from './population.ts';
import { createRecreate, recreate } from './recreate.ts';
import { clearRuin, createRuin, pick, setRuinLessons } from './ruin.ts';
import { createRunProgramme } from './run-programme.ts';
import { isBetter, newScore, scoreSize } from './score.ts';
import { createSpill } from './spill.ts';
import { chunks, clearState, createState, startStep, undoStep } from './state.ts';
import {
  crosses,
  crossesShare,
  crossWarmth,
  firstShare,
  firstWarmth,
  lastWarmth,
  members,
  shareByLevel,
  undoneShareOfFirst,
} from './tuning.ts';
import { createWalk, keepIfBest, own, ownMinutes, ownReviewAt, startWalk, walk } from './walk.ts';

/** How long one search may be before another start is worth more, by activity and lesson. */
const stepsPerCell: i32 = 133;
/** Work in one step of the budget. */
const workPerStep: i32 = 1000;
/** First plans made from nothing for a replan, each in another order, beside the last plan. */
const starts: i32 = 8;

// the best of all searches
export let bestMinutes: i32 = 0;
export let bestReviewAt: i32 = 0;
export let best: i32 = 0;

/**
 * Searches for at most about `steps` × 1000 of work; the same arguments give the same plan. A small
 * problem is searched several times from the start rather than once for long.
 */
export function search(steps: i32): void {
  create();
  const longest = max(9000, stepsPerCell * activityCount * lessonCount);
  const times = max(1, steps / longest);
  for (let n = 0; n < times; n++) {
    searchOnce(f64(steps) / f64(times));
    if (n > 0 && !isBetter(own, best)) continue;
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
  createSpill();
  createWalk();
  createPopulation();
  best = newScore();
  bestMinutes = newInts(activityCount * lessonCount);
  bestReviewAt = newInts(reviewCount);
}

function searchOnce(steps: f64): void {
  clearState();
  clearInserter();
  startClock();
  findBounds();
  if (hasLast) loadLastPlan();
  startWalk();
  if (lessonCount === 0) return;
  const budget = steps * f64(workPerStep);
  if (hasLast || activityCount === 0) replan(budget);
  else planAnew(budget);
}

/** Walks from the last plan, or from one made from nothing where that is better; without activities there is no walk. */
function replan(budget: f64): void {
  for (let n = 0; n < starts; n++) {
    if (n > 0) clearState();
    placeAll(n);
    keepIfBest();
  }
  if (activityCount > 0) walk(budget, 0, 3, 1, shareByLevel(0));
}

function planAnew(budget: f64): void {
  const until = budget * crossesShare;
  for (let n = 0; n < members; n++) {
    clearState();
    placeAll(n);
    startWalk();
    walk((until * firstShare * f64(n + 1)) / f64(members), 0, 2, firstWarmth, undoneShareOfFirst);
    keepMember(n);
  }
  const isSettled = isUndoneSettled();
  if (isSettled) crossUntil(until);
  restoreMember(bestMember());
  startWalk();
  if (isSettled) walk(budget, 1, 2, lastWarmth, 0);
  // U is hard to bring down here: one long walk does that best
  else walk(budget, 0, 2, 1, shareByLevel(0));
}

function crossUntil(until: f64): void {
  const each = (until - work) / f64(crosses);
  while (work < until - 0.5 * each) {
    const a = drawMember();
    const b = drawOther(a);
    const end = work + each;
    cross(a, b);
    startWalk();
    // not by U first, which has no regard for what makes the parents good at P
    walk(end, 1, 2, crossWarmth, 0);
    admit(a, b);
  }
}

/** A first plan: everything that does not stand yet, put in one after the other. */
function placeAll(start: i32): void {
  clearRuin();
  for (let i = 0; i < activityCount; i++) if (int(chunks, i) === 0) pick(i);
  setRuinLessons(0, -1);
  startStep();
  if (!recreate(start % 2, Infinity, start < 2)) undoStep();
}
