// The dynamic programme where the run limit bites: over lessons × minutes × lessons in a row.

import { type Inserter, leastOf, leastToCome, prepareLesson, priceMinutes } from './inserter.ts';
import type { Model } from './model.ts';
import type { State } from './state.ts';

/** The same with the state of the run: 0 … maxRun − 1 lessons in a row, then parkGap … 1 lessons of rest. */
export function runProgramme(
  model: Model,
  state: State,
  inserter: Inserter,
  i: number,
  from: number,
  until: number,
  wantsAll: boolean,
): void {
  const { choice, cap, lateCost, minuteCost } = inserter;
  let { cost, nextCost } = inserter;
  const { maxRun, parkGap } = model;
  const demand = model.demand[i] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const maxPartial = model.maxPartial[i] ?? 0;
  const states = maxRun + parkGap;
  const width = (demand + 1) * states;
  for (let k = 0; k < width; k++) cost[k] = Number.POSITIVE_INFINITY;
  cost[from === 0 ? (model.runStart[i] ?? 0) : 0] = 0;
  let reach = 0;
  inserter.stop = until;
  for (let l = from; l <= until; l++) {
    prepareLesson(model, state, inserter, i, l);
    const most = cap[l] ?? 0;
    const row = l * width;
    nextCost.fill(Number.POSITIVE_INFINITY, 0, width);
    if (most > 0) priceMinutes(model, inserter, i, l, most);
    const late = lateCost[l] ?? 0;
    // a choice above 0 is minutes placed; otherwise nothing is placed and minus it is the run state before
    for (let s = 0; s <= demand; s = s === reach ? demand : s + 1) {
      const high = Math.min(most, demand - s);
      for (let run = 0; run < states; run++) {
        const here = cost[s * states + run] ?? 0;
        if (here === Number.POSITIVE_INFINITY) continue;
        const idle = s * states + afterRest(run, maxRun);
        if (here < (nextCost[idle] ?? 0)) {
          nextCost[idle] = here;
          choice[row + idle] = -run;
        }
        if (run >= maxRun) continue;
        const nextRun = run + 1 < maxRun ? run + 1 : states - 1;
        for (let m = minChunk; m <= high; m++) {
          const sum = s + m;
          if (sum > maxPartial && sum < demand) continue;
          const there = here + (minuteCost[m] ?? 0) + (sum === demand ? late : 0);
          const k = sum * states + nextRun;
          if (there >= (nextCost[k] ?? 0)) continue;
          nextCost[k] = there;
          choice[row + k] = m;
        }
        inserter.work += 3;
        if (high >= minChunk) inserter.work += high - minChunk + 1;
      }
      if (s === demand) break;
    }
    [cost, nextCost] = [nextCost, cost];
    inserter.work += width >> 2;
    reach = Math.max(reach, Math.min(maxPartial, reach + most));
    if (wantsAll && isRunSettled(model, inserter, cost, i, l, reach)) {
      inserter.stop = l;
      break;
    }
  }
  if (cost !== inserter.cost) inserter.cost.set(cost.subarray(0, width));
}

/** As `isSettled`, over the states of the run. */
function isRunSettled(
  model: Model,
  inserter: Inserter,
  cost: Float64Array,
  i: number,
  l: number,
  reach: number,
): boolean {
  const states = model.maxRun + model.parkGap;
  const demand = model.demand[i] ?? 0;
  const complete = leastOf(cost, demand, states);
  if (complete === Number.POSITIVE_INFINITY) return false;
  const price = inserter.leastPrice[l + 1] ?? 0;
  const room = complete - leastToCome(model, inserter, i);
  for (let s = 0; s <= reach; s++)
    for (let run = 0; run < states; run++)
      if ((cost[s * states + run] ?? 0) + price * (demand - s) < room) return false;
  return true;
}

const afterRest = (run: number, maxRun: number): number => (run > maxRun ? run - 1 : 0);

/** Reads the way to `wanted` minutes off the programme into `row`. */
export function readRun(model: Model, inserter: Inserter, i: number, from: number, wanted: number): void {
  const { cost, choice, row } = inserter;
  const { maxRun, parkGap } = model;
  const states = maxRun + parkGap;
  const width = ((model.demand[i] ?? 0) + 1) * states;
  let s = wanted;
  let run = 0;
  for (let k = 1; k < states; k++) if ((cost[s * states + k] ?? 0) < (cost[s * states + run] ?? 0)) run = k;
  for (let l = inserter.stop; l >= from; l--) {
    const m = choice[l * width + s * states + run] ?? 0;
    row[l] = Math.max(0, m);
    if (m > 0) {
      s -= m;
      run = run === states - 1 ? maxRun - 1 : run - 1;
    } else run = -m;
  }
}
/** Whether the lessons from position `start` of `row` keep the run limit, counted from the run before lesson 0. */
export function isRunAllowed(
  model: Model,
  row: Int32Array,
  start: number,
  i: number,
  from: number,
  until: number,
): boolean {
  const { maxRun, parkGap } = model;
  let run = from === 0 ? (model.runStart[i] ?? 0) : 0;
  let rest = 0;
  for (let l = from; l <= until; l++) {
    if ((row[start + l] ?? 0) === 0) {
      run = 0;
      rest--;
      continue;
    }
    if (rest > 0) return false;
    run++;
    if (run === maxRun) {
      rest = parkGap;
      run = 0;
    }
  }
  return true;
}
