// What no plan can go below, found in a moment: when the search reaches it at one level, it goes on to the next.

import { insertActivity } from './insert-activity.ts';
import type { Inserter } from './inserter.ts';
import type { Model } from './model.ts';
import { createState, never, removeActivity, startStep } from './state.ts';

export interface Bounds {
  readonly undone: number;
  /** Least P of the plans that reach the least U. */
  readonly penalty: number;
}

/**
 * Each activity alone in empty lessons, after what it rests on: what it cannot do there is left undone in every plan.
 * Plans at that least U do all the rest, in no fewer chunks than the longest one demands.
 */
export function lowerBounds(model: Model, inserter: Inserter): Bounds {
  const { activityCount, lessonCount } = model;
  const state = createState(model);
  const earliest = new Int32Array(activityCount).fill(-1);
  let undone = 0;
  let penalty = 0;
  const visit = (i: number): number => {
    const known = earliest[i] ?? -1;
    if (known >= 0) return known;
    let from = model.first[i] ?? 0;
    for (const p of model.preds[i] ?? []) from = Math.max(from, visit(p));
    const demand = model.demand[i] ?? 0;
    let most = 0;
    let done = demand === 0 && lessonCount > 0 ? 0 : never;
    for (let l = from; l <= (model.last[i] ?? -1); l++) {
      most += aloneIn(model, i, l);
      if (done === never && most >= demand) done = l;
    }
    earliest[i] = done;
    if (demand === 0) return done;
    if (most < demand) penalty += model.value[i] ?? 0;
    const weight = model.weight[i] ?? 0;
    if (weight === 0) return done;
    const sum = from < lessonCount ? mostAlone(i) : 0;
    undone += weight * (demand - sum);
    const longest = Math.max(1, model.maxChunk[i] ?? 1);
    if (sum > 0) penalty += model.splitWeight * (Math.ceil(sum / longest) - 1);
    return done;
  };
  // with the preceding work complete as early as can be, the programme says how much fits at most
  const mostAlone = (i: number): number => {
    for (const p of model.preds[i] ?? []) state.doneAt[p] = earliest[p] ?? never;
    startStep(state);
    insertActivity(model, state, inserter, i, false);
    const sum = state.sum[i] ?? 0;
    removeActivity(model, state, i);
    return sum;
  };
  for (let i = 0; i < activityCount; i++) visit(i);
  return { undone, penalty };
}

/** Most minutes of an activity in an otherwise empty lesson. */
function aloneIn(model: Model, i: number, l: number): number {
  const recap = model.recap[l] ?? 0;
  const limit = model.squareLimit[l];
  if ((model.maxBlocks[l] ?? 0) < 1 || (model.maxStrands[l] ?? 0) < 1) return 0;
  for (let m = model.maxChunk[i] ?? 0; m >= (model.minChunk[i] ?? 1); m--)
    if (recap + m <= (model.capacity[l] ?? 0) && recap * recap + m * m <= (limit?.[recap + m] ?? -1))
      return m;
  return 0;
}
