// The search: take some work out, put it back, keep the plan when it is better, or with luck when it is a little worse
// (annealing, level by level: a loss counts at the first of U, P, E in which the plans differ).

import type { Random } from '#core';
import { createInserter, insertActivity } from './insert-activity.ts';
import { createChunkList, moveMinutes } from './minute-moves.ts';
import type { Model } from './model.ts';
import { recreate } from './recreate.ts';
import { chooseRuin, createRuin } from './ruin.ts';
import { firstDifference, type LastPlan, measureScore, type Score } from './score.ts';
import { createState, never, type State, setMinutes, setReview, startStep, undoStep } from './state.ts';

export interface SearchResult {
  readonly minutes: Int32Array;
  readonly reviewAt: Int32Array;
  readonly score: Score;
  readonly rounds: number;
  readonly work: number;
}

const KA = Number(process.env['KA'] ?? 2), KB = Number(process.env['KB'] ?? 4);
const EV = Number(process.env['EV'] ?? 1), MV = Number(process.env['MV'] ?? 20);
/** Elementary operations in one step of the budget. */
export const workPerStep = 1000;

/** Searches for at most about `steps` × 1000 elementary operations. */
export function search(model: Model, random: Random, steps: number, previous: LastPlan | null): SearchResult {
  const state = createState(model);
  const inserter = createInserter(model, previous?.minutes ?? null);
  const ruin = createRuin(model);
  const chunkList = createChunkList(model);
  const keys = new Float64Array(model.activityCount);
  let current: Score = new Float64Array(4);
  let candidate: Score = new Float64Array(4);
  const best: Score = new Float64Array(4);
  if (previous !== null) loadPrevious(model, state, previous);
  // a first plan: everything not yet placed, in the order of the file
  if (model.activityCount > 0 && model.lessonCount > 0) {
    startStep(state);
    ruin.pickedCount = 0;
    for (let i = 0; i < model.activityCount; i++) {
      if ((state.chunks[i] ?? 0) > 0) continue;
      ruin.picked[ruin.pickedCount++] = i;
      ruin.isPicked[i] = 1;
    }
    ruin.until = -1;
    recreate(model, state, random, inserter, ruin, keys);
  }
  measureScore(model, state, previous, current);
  best.set(current);
  const bestMinutes = state.minutes.slice();
  const bestReviewAt = state.reviewAt.slice();
  const scale = temperatures(model);
  const budget = steps * workPerStep;
  const roundWork = 3 * model.activityCount + 8 * model.reviewCount + 2 * model.lessonCount + 100;
  let rounds = 0;
  while (inserter.work < budget && model.activityCount > 0 && model.lessonCount > 0) {
    rounds++;
    inserter.work += roundWork;
    const cooling = Math.max(0, 1 - inserter.work / (budget * 0.9));
    startStep(state);
    chooseRuin(model, state, random, ruin, KA + (rounds % KB));
    if (!recreate(model, state, random, inserter, ruin, keys)) {
      undoStep(model, state);
      continue;
    }
    measureScore(model, state, previous, candidate);
    const level = firstDifference(candidate, current);
    const loss = level === 4 ? 0 : (candidate[level] ?? 0) - (current[level] ?? 0);
    const heat = (scale[level] ?? 0) * cooling * cooling;
    if (loss > 0 && (heat <= 0 || random.next() >= Math.exp(-loss / heat))) {
      undoStep(model, state);
      continue;
    }
    [current, candidate] = [candidate, current];
    if (previous === null && rounds % EV === 0) {
      moveMinutes(model, state, random, chunkList, current, (scale[0] ?? 0) * cooling * cooling, (scale[2] ?? 0) * cooling * cooling, MV);
      inserter.work += 8 * MV + model.activityCount * model.lessonCount;
    }
    const against = firstDifference(current, best);
    if (against < 4 && (current[against] ?? 0) < (best[against] ?? 0)) {
      best.set(current);
      bestMinutes.set(state.minutes);
      bestReviewAt.set(state.reviewAt);
    }
  }
  return { minutes: bestMinutes, reviewAt: bestReviewAt, score: best, rounds, work: inserter.work };
}

/** Losses at each level that are still worth trying at the start. */
function temperatures(model: Model): Float64Array {
  let weight = Number.POSITIVE_INFINITY;
  for (const w of model.weight) if (w > 0) weight = Math.min(weight, w);
  let unit = 0;
  for (const w of [model.lateWeight, model.soloWeight, model.splitWeight]) unit = Math.max(unit, w);
  const e = (n: string, d: number) => Number(process.env[n] ?? d);
  return Float64Array.from([weight === Number.POSITIVE_INFINITY ? 0 : e('TU', 4) * weight, unit * e('TP', 0.7), e('TE', 5), 4]);
}

/** Starts from the last plan as far as it is still allowed: activity by activity, whole rows or nothing. */
function loadPrevious(model: Model, state: State, previous: LastPlan): void {
  void insertActivity;
  void setMinutes;
  void setReview;
  void never;
  void model;
  void state;
  void previous;
}
