// The search: take some work out, put it back, keep the plan when it is better, or with luck when it is a little worse
// (annealing). It goes level by level, as the objective does: first U with P and E left free, then P with U held, then
// E with both held, then closeness to the last plan.

import type { Random } from '#core';
import { type Bounds, lowerBounds } from './bounds.ts';
import { chooseRuin } from './choose-ruin.ts';
import { coolHeats, type Heats, isKept, luckFrom, startingHeats } from './heats.ts';
import { createInserter, type Inserter } from './inserter.ts';
import { loadLastPlan } from './last-plan.ts';
import { createChunkList, listChunks, moveMinutes } from './minute-moves.ts';
import type { Model } from './model.ts';
import { improveReviews, recreate } from './recreate.ts';
import { createRuin, type Ruin } from './ruin.ts';
import { firstDifference, type LastPlan, measureScore, type Score } from './score.ts';
import { createState, never, restorePlan, type State, setReview, startStep, undoStep } from './state.ts';
import type { SwapChange } from './swap-moves.ts';
import { swapChunks } from './swap-round.ts';
import { tuning } from './tuning.ts';

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
/** Cost of a move of single minutes, and of a swap, in elementary operations. */
const minuteMoveWork = 8;
const swapWork = 45;

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
  const change: SwapChange = { penalty: 0, early: 0, a: 0, b: 0, cellA: 0, cellB: 0 };
  const heatsAtStart = startingHeats(model);
  const heats: Heats = new Float64Array(4);
  const onSwapGain = (): void => {
    // with a last plan, what moved is only counted after the round
    if (last === null && keepIfBest(level)) lastGain = inserter.work;
  };
  const lastLevel = last === null ? 2 : 3;
  const bounds = lowerBounds(model, inserter);
  let level = -1;
  let levelStart = 0;
  let levelEnd = 0;
  let lastGain = 0;
  let rounds = 0;
  while (inserter.work < budget) {
    const stuck = inserter.work - lastGain > tuning.patience * (budget - levelStart);
    if (level < lastLevel && (inserter.work >= levelEnd || stuck || isLeast(best, level, bounds))) {
      level++;
      levelStart = inserter.work;
      lastGain = levelStart;
      levelEnd =
        levelStart + (budget - levelStart) * (level === lastLevel ? 1 : (tuning.shareByLevel[level] ?? 1));
      restorePlan(model, state, bestMinutes, bestReviewAt);
      // revisits only take room from work: they come back when P counts
      if (level === 0) for (let r = 0; r < model.reviewCount; r++) setReview(model, state, r, never);
      else if (level === 1) improveReviews(model, state, random);
      measureScore(model, state, last, current);
      keepIfBest(level);
      continue;
    }
    rounds++;
    inserter.work += roundWork;
    const cooling = Math.max(0, 1 - (inserter.work - levelStart) / ((levelEnd - levelStart) * 0.9));
    coolHeats(heats, heatsAtStart, level, cooling);
    if (level < 3 && random.next() < (tuning.swapShare[level] ?? 0)) {
      inserter.work += tuning.swaps * swapWork;
      swapChunks(model, state, random, chunkList, change, current, level, heats, onSwapGain);
      measureScore(model, state, last, current);
      if (keepIfBest(level)) lastGain = inserter.work;
      continue;
    }
    startStep(state);
    chooseRuin(model, state, random, ruin, tuning.leastRuin + (rounds % tuning.ruinSizes), level);
    // drawn before, so that a plan that leaves too much undone is given up early
    const luck = luckFrom(random.next());
    const mostUndone = (current[0] ?? 0) + (heats[0] ?? 0) * luck + 1e-7;
    if (!recreate(model, state, random, inserter, ruin, keys, level, mostUndone)) {
      undoStep(model, state);
      continue;
    }
    measureScore(model, state, last, candidate);
    if (!isKept(candidate, current, level, heats, luck)) {
      undoStep(model, state);
      continue;
    }
    [current, candidate] = [candidate, current];
    if (level < 3) {
      listChunks(model, state, chunkList);
      moveMinutes(model, state, random, chunkList, current, {
        heatU: heats[0] ?? 0,
        heatE: level === 2 ? (heats[2] ?? 0) : Number.POSITIVE_INFINITY,
        count: tuning.minuteMoves,
      });
      if (last !== null) measureScore(model, state, last, current);
      inserter.work += tuning.minuteMoves * minuteMoveWork + model.activityCount * model.lessonCount;
    }
    if (keepIfBest(level)) lastGain = inserter.work;
  }
  return { minutes: bestMinutes, reviewAt: bestReviewAt, score: best, rounds };
}

function isLeast(best: Score, level: number, bounds: Bounds): boolean {
  const bound =
    level < 0 ? Number.POSITIVE_INFINITY : level === 0 ? bounds.undone : level === 1 ? bounds.penalty : -1;
  return (best[level] ?? 0) <= bound + 1e-9;
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
  if (!recreate(model, state, random, inserter, ruin, keys, start % 2, Number.POSITIVE_INFINITY, start < 2))
    undoStep(model, state);
}
