// The search: take some work out, put it back, keep the plan when it is better, or with luck when it is a little worse
// (annealing). It goes level by level, as the objective does: first U with P and E left free, then P with U held, then
// E with both held, then closeness to the last plan.

import type { Random } from '#core';
import { type Bounds, lowerBounds } from './bounds.ts';
import { createInserter, type Inserter } from './inserter.ts';
import { loadLastPlan } from './last-plan.ts';
import { createChunkList, listChunks, moveMinutes } from './minute-moves.ts';
import type { Model } from './model.ts';
import { improveReviews, recreate } from './recreate.ts';
import { chooseRuin, createRuin, type Ruin } from './ruin.ts';
import { firstDifference, type LastPlan, measureScore, type Score } from './score.ts';
import { createState, never, restorePlan, type State, setReview, startStep, undoStep } from './state.ts';
import { noteSwap, type SwapChange, trySwap, trySwapLessons } from './swap-moves.ts';
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
/** Cost of a move of single minutes in elementary operations. */
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
  const scale = startingHeat(model);
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
    const heat = (scale[level] ?? 0) * cooling ** tuning.coolingPower;
    if (level < 3 && random.next() < (tuning.swapShare[level] ?? 0)) {
      listChunks(model, state, chunkList);
      inserter.work += tuning.swaps * swapWork;
      if (chunkList.length < 2) continue;
      for (let n = 0; n < tuning.swaps; n++) {
        const withReviews = level > 0;
        const made =
          n < tuning.lessonSwaps
            ? trySwapLessons(model, state, random, withReviews, change)
            : trySwap(model, state, random, chunkList, tuning.moveShare, withReviews, change);
        if (!made) continue;
        const luck = -Math.log(1 - random.next());
        const { penalty, early } = change;
        const costly = level > 0 && Math.abs(penalty) > 1e-7;
        const heatHere = costly
          ? level === 1
            ? heat
            : tuning.heatOfPAtE * (scale[1] ?? 0) * cooling * cooling
          : level === 2
            ? heat
            : (level === 0 ? tuning.earlinessAtU : tuning.earlinessAtP) * (0.1 + cooling);
        const loss = costly ? penalty : early;
        if (loss > 0 && loss >= heatHere * luck) {
          undoStep(model, state);
          continue;
        }
        if (change.a < 0) listChunks(model, state, chunkList);
        else noteSwap(chunkList, change);
        current[1] = (current[1] ?? 0) + penalty;
        current[2] = (current[2] ?? 0) + early;
        if (loss < 0 && level > 0 && last === null && keepIfBest(level)) lastGain = inserter.work;
      }
      measureScore(model, state, last, current);
      if (keepIfBest(level)) lastGain = inserter.work;
      continue;
    }
    startStep(state);
    chooseRuin(model, state, random, ruin, tuning.leastRuin + (rounds % tuning.ruinSizes), level);
    // drawn before, so that a plan that leaves too much undone is given up early
    const luck = -Math.log(1 - random.next());
    const mostUndone = (current[0] ?? 0) + (level === 0 ? heat * luck : 0) + 1e-7;
    if (!recreate(model, state, random, inserter, ruin, keys, level, mostUndone)) {
      undoStep(model, state);
      continue;
    }
    measureScore(model, state, last, candidate);
    if (!isKept(luck, firstDifference(candidate, current), candidate, current, level, heat, scale, cooling)) {
      undoStep(model, state);
      continue;
    }
    [current, candidate] = [candidate, current];
    if (level < 3) {
      listChunks(model, state, chunkList);
      moveMinutes(model, state, random, chunkList, current, {
        heatU: level === 0 ? heat : 0,
        heatE: level === 2 ? heat : Number.POSITIVE_INFINITY,
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

/** Whether a changed plan is kept: losses before the level never, at it with luck, after it always. */
function isKept(
  luck: number,
  differsAt: number,
  candidate: Score,
  current: Score,
  level: number,
  heat: number,
  scale: Float64Array,
  cooling: number,
): boolean {
  const loss = (candidate[differsAt] ?? 0) - (current[differsAt] ?? 0);
  if (differsAt > level) {
    // before E counts, plans that are early rather than scattered keep what room there is in one piece
    if (level >= 2) return true;
    const lossE = (candidate[2] ?? 0) - (current[2] ?? 0);
    return (
      lossE <= 0 || lossE < (level === 0 ? tuning.earlinessAtU : tuning.earlinessAtP) * (0.1 + cooling) * luck
    );
  }
  if (loss <= 0) return true;
  if (differsAt === level) return loss < heat * luck;
  // U never, P hardly ever, and only while it is still hot
  return (
    level === 2 && differsAt === 1 && loss < tuning.heatOfPAtE * (scale[1] ?? 0) * cooling * cooling * luck
  );
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

/** Losses at each level that are still worth trying at the start: a few minutes, about one weight of P, a few of E. */
function startingHeat(model: Model): Float64Array {
  let weight = Number.POSITIVE_INFINITY;
  for (const w of model.weight) if (w > 0) weight = Math.min(weight, w);
  const unit = Math.max(model.lateWeight, model.soloWeight, model.splitWeight);
  return Float64Array.from([
    weight === Number.POSITIVE_INFINITY ? 0 : tuning.heatU * weight,
    unit * tuning.heatP,
    tuning.heatE,
    0,
  ]);
}
