// The dynamic programme over lessons × minutes placed so far, without the run limit.

import { type Inserter, leastToCome, prepareLesson, priceMinutes } from './inserter.ts';
import type { Model } from './model.ts';
import type { State } from './state.ts';

/** Cheapest ways to each number of minutes, into `cost` and `choice`; with `wantsAll` only as far as completion needs. */
export function plainProgramme(
  model: Model,
  state: State,
  inserter: Inserter,
  i: number,
  from: number,
  until: number,
  wantsAll: boolean,
): void {
  const { cost, choice, cap, lateCost, minuteCost } = inserter;
  const demand = model.demand[i] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const maxPartial = model.maxPartial[i] ?? 0;
  const width = demand + 1;
  for (let s = 1; s <= demand; s++) cost[s] = Number.POSITIVE_INFINITY;
  cost[0] = 0;
  let reach = 0;
  inserter.stop = until;
  for (let l = from; l <= until; l++) {
    prepareLesson(model, state, inserter, i, l);
    const most = cap[l] ?? 0;
    if (most === 0) continue;
    const row = l * width;
    priceMinutes(model, inserter, i, l, most);
    // complete here
    choice[row + demand] = 0;
    if (reach + most >= demand) {
      const late = lateCost[l] ?? 0;
      let best = cost[demand] ?? 0;
      let bestMinutes = 0;
      for (let m = Math.max(minChunk, demand - reach); m <= most; m++) {
        const here = (cost[demand - m] ?? 0) + late + (minuteCost[m] ?? 0);
        if (here < best) {
          best = here;
          bestMinutes = m;
        }
      }
      if (bestMinutes > 0) {
        cost[demand] = best;
        choice[row + demand] = bestMinutes;
      }
    }
    const top = Math.min(maxPartial, reach + most);
    for (let s = maxPartial; s > top; s--) choice[row + s] = 0;
    for (let s = top; s >= minChunk; s--) {
      let least = cost[s] ?? 0;
      let leastMinutes = 0;
      const high = Math.min(most, s);
      for (let m = Math.max(s - reach, minChunk); m <= high; m++) {
        const here = (cost[s - m] ?? 0) + (minuteCost[m] ?? 0);
        if (here < least) {
          least = here;
          leastMinutes = m;
        }
      }
      cost[s] = least;
      choice[row + s] = leastMinutes;
    }
    if (top >= minChunk) inserter.work += (top - minChunk + 2) * (most - minChunk + 1) + 8;
    else inserter.work += most - minChunk + 8;
    if (top > reach) reach = top;
    if (
      wantsAll &&
      (cost[demand] ?? 0) < Number.POSITIVE_INFINITY &&
      isSettled(model, inserter, i, l, reach)
    ) {
      inserter.stop = l;
      return;
    }
  }
}

/**
 * Whether no way that goes on after lesson l can cost less than completing by then: each has at least one more chunk
 * and pays at least the least price to come for what is missing.
 */
function isSettled(model: Model, inserter: Inserter, i: number, l: number, reach: number): boolean {
  const { cost } = inserter;
  const demand = model.demand[i] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const price = inserter.leastPrice[l + 1] ?? 0;
  const room = (cost[demand] ?? 0) - leastToCome(model, inserter, i);
  if (price * demand < room) return false;
  for (let s = minChunk; s <= reach; s++) if ((cost[s] ?? 0) + price * (demand - s) < room) return false;
  return true;
}

/** Reads the way to `wanted` minutes off the programme into `row`. */
export function readPlain(model: Model, inserter: Inserter, i: number, from: number, wanted: number): void {
  const { row, choice, cap } = inserter;
  const width = (model.demand[i] ?? 0) + 1;
  let s = wanted;
  for (let l = inserter.stop; l >= from; l--) {
    const m = s === 0 || (cap[l] ?? 0) === 0 ? 0 : (choice[l * width + s] ?? 0);
    row[l] = m;
    s -= m;
  }
}
