// The search: take some work out, put it back, keep the plan when it is better, or with luck when it is a little worse
// (annealing). It goes level by level, as the objective does: first U with P and E left free, then P with U held, then
// E with both held, then closeness to the last plan.

import type { Random } from '#core';
import { createInserter, type Inserter } from './insert-activity.ts';
import { loadLastPlan } from './last-plan.ts';
import { createChunkList, moveMinutes } from './minute-moves.ts';
import type { Model } from './model.ts';
import { recreate } from './recreate.ts';
import { chooseRuin, createRuin, type Ruin } from './ruin.ts';
import { firstDifference, type LastPlan, measureScore, type Score } from './score.ts';
import { createState, restorePlan, type State, startStep, undoStep } from './state.ts';

export interface SearchResult {
  readonly minutes: Int32Array;
  readonly reviewAt: Int32Array;
  readonly score: Score;
  readonly rounds: number;
}

/** How long one search may be before another start is worth more, by activity and lesson. */
const stepsPerCell = 50;
/** Elementary operations in one step of the budget. */
export const workPerStep = 1000;

/** First plans made from nothing, each in another order; the best of them is searched from. */
const starts = 8;
/** Share of what is left of the budget that each level gets at most; the last gets the rest. */
const shareByLevel = [0.55, 0.6, 0.9, 1];
/** A level is left early after this share of what was left when it began without a gain. */
const patience = 0.3;
/** Moves of single minutes after each plan kept, and their cost against one elementary operation. */
const minuteMoves = 20;
const minuteMoveWork = 8;

/**
 * Searches for at most about `steps` × 1000 elementary operations; the same arguments give the same plan. A small
 * problem is searched several times from the start rather than once for long.
 */
export function search(model: Model, random: Random, steps: number, last: LastPlan | null): SearchResult {
  const longest = Math.max(2500, stepsPerCell * model.activityCount * model.lessonCount);
  const times = Math.max(1, Math.floor(steps / longest));
  let best = searchOnce(model, random, steps / times, last);
  let { rounds } = best;
  for (let n = 1; n < times; n++) {
    const next = searchOnce(model, random, steps / times, last);
    rounds += next.rounds;
    const at = firstDifference(next.score, best.score);
    if (at < 4 && (next.score[at] ?? 0) < (best.score[at] ?? 0)) best = next;
  }
  return { ...best, rounds };
}

function searchOnce(model: Model, random: Random, steps: number, last: LastPlan | null): SearchResult {
  const state = createState(model);
  const inserter = createInserter(model, last?.minutes ?? null);
  const ruin = createRuin(model);
  const keys = new Float64Array(model.activityCount);
  const blankMinutes = state.minutes.slice();
  const blankReviewAt = state.reviewAt.slice();
  if (last !== null) loadLastPlan(model, state, last);
  let current: Score = new Float64Array(4);
  let candidate: Score = new Float64Array(4);
  measureScore(model, state, last, current);
  const best = current.slice();
  const bestMinutes = state.minutes.slice();
  const bestReviewAt = state.reviewAt.slice();
  const keepIfBest = (level: number): boolean => {
    const gainAt = firstDifference(current, best);
    if (gainAt === 4 || (current[gainAt] ?? 0) > (best[gainAt] ?? 0)) return false;
    best.set(current);
    bestMinutes.set(state.minutes);
    bestReviewAt.set(state.reviewAt);
    return gainAt <= level;
  };
  for (let n = 0; n < starts && model.lessonCount > 0; n++) {
    if (n > 0) restorePlan(model, state, blankMinutes, blankReviewAt);
    placeAll(model, state, random, inserter, ruin, keys, n);
    measureScore(model, state, last, current);
    keepIfBest(0);
  }

  const budget = model.lessonCount > 0 && model.activityCount > 0 ? steps * workPerStep : 0;
  const roundWork = 6 * model.activityCount + 16 * model.reviewCount + 3 * model.lessonCount + 150;
  const chunkList = createChunkList(model);
  const scale = startingHeat(model);
  const lastLevel = last === null ? 2 : 3;
  let level = -1;
  let levelStart = 0;
  let levelEnd = 0;
  let lastGain = 0;
  let rounds = 0;
  while (inserter.work < budget) {
    const stuck = inserter.work - lastGain > patience * (budget - levelStart);
    if (level < lastLevel && (inserter.work >= levelEnd || stuck || (best[level] ?? 0) <= 1e-9)) {
      level++;
      levelStart = inserter.work;
      lastGain = levelStart;
      levelEnd = levelStart + (budget - levelStart) * (level === lastLevel ? 1 : (shareByLevel[level] ?? 1));
      restorePlan(model, state, bestMinutes, bestReviewAt);
      current.set(best);
      continue;
    }
    rounds++;
    inserter.work += roundWork;
    const cooling = Math.max(0, 1 - (inserter.work - levelStart) / ((levelEnd - levelStart) * 0.9));
    const heat = (scale[level] ?? 0) * cooling * cooling;
    startStep(state);
    chooseRuin(model, state, random, ruin, 2 + (rounds % 4));
    if (!recreate(model, state, random, inserter, ruin, keys, level)) {
      undoStep(model, state);
      continue;
    }
    measureScore(model, state, last, candidate);
    if (!isKept(random, firstDifference(candidate, current), candidate, current, level, heat)) {
      undoStep(model, state);
      continue;
    }
    [current, candidate] = [candidate, current];
    if (level < 3) {
      moveMinutes(model, state, random, chunkList, current, {
        heatU: level === 0 ? heat : 0,
        heatE: level === 2 ? heat : Number.POSITIVE_INFINITY,
        count: minuteMoves,
      });
      if (last !== null) measureScore(model, state, last, current);
      inserter.work += minuteMoves * minuteMoveWork + model.activityCount * model.lessonCount;
    }
    if (keepIfBest(level)) lastGain = inserter.work;
  }
  return { minutes: bestMinutes, reviewAt: bestReviewAt, score: best, rounds };
}

/** Whether a changed plan is kept: losses before the level never, at it with luck, after it always. */
function isKept(
  random: Random,
  differsAt: number,
  candidate: Score,
  current: Score,
  level: number,
  heat: number,
): boolean {
  const loss = (candidate[differsAt] ?? 0) - (current[differsAt] ?? 0);
  if (differsAt > level || loss <= 0) return true;
  return differsAt === level && heat > 0 && random.next() < Math.exp(-loss / heat);
}

/** A first plan: everything that does not stand yet, put in one after the other. */
function placeAll(
  model: Model,
  state: State,
  random: Random,
  inserter: Inserter,
  ruin: Ruin,
  keys: Float64Array,
  start: number,
): void {
  ruin.pickedCount = 0;
  for (let i = 0; i < model.activityCount; i++) {
    if ((state.chunks[i] ?? 0) > 0) continue;
    ruin.picked[ruin.pickedCount++] = i;
    ruin.isPicked[i] = 1;
  }
  ruin.from = 0;
  ruin.until = -1;
  startStep(state);
  if (!recreate(model, state, random, inserter, ruin, keys, start % 2, start < 2)) undoStep(model, state);
}

/** Losses at each level that are still worth trying at the start: a few minutes, about one weight of P, a few of E. */
function startingHeat(model: Model): Float64Array {
  let weight = Number.POSITIVE_INFINITY;
  for (const w of model.weight) if (w > 0) weight = Math.min(weight, w);
  const unit = Math.max(model.lateWeight, model.soloWeight, model.splitWeight);
  return Float64Array.from([weight === Number.POSITIVE_INFINITY ? 0 : 6 * weight, unit * 1.2, 5, 0]);
}
