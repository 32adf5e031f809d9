// Puts one activity back into the lessons in the best way there is with everything else as it stands: an exact dynamic
// programme over lessons × minutes placed so far (× lessons in a row, where the run limit can bite).

import { reviewFits } from './insert-review.ts';
import type { Model } from './model.ts';
import { never, refreshActivity, type State, setMinutes } from './state.ts';

/** Weight of P against E inside one activity, where E stays below 60 lessons × 600 minutes. */
const pWeight = 1e6;
/** Weight of a minute moved from the last plan: below any step of E. */
const moveWeight = 1e-5;

export interface Inserter {
  /** Most minutes an activity may get in each lesson this time; the search lowers it to try something else. */
  readonly roof: Int32Array;
  /** The last plan's minutes by activity and lesson; null when there is none. */
  readonly previous: Int32Array | null;
  readonly cost: Float64Array;
  readonly nextCost: Float64Array;
  readonly choice: Int16Array;
  readonly cap: Int32Array;
  readonly row: Int32Array;
  readonly chunkCost: Float64Array;
  readonly lateCost: Float64Array;
  readonly minuteCost: Float64Array;
  /** Price of a squared minute: above 0 makes small chunks that leave room under the overrun limit. */
  squarePrice: number;
  /** What this round makes of the weights of P: 1 as they are, less to try what they forbid. */
  splitFactor: number;
  soloFactor: number;
  lateFactor: number;
  /** Price of a minute in each lesson: its index, as in E, or anything else while E does not count yet. */
  readonly lessonPrice: Float64Array;
  /** Elementary operations so far: the clock of the search. */
  work: number;
}

export function createInserter(model: Model, previous: Int32Array | null): Inserter {
  const { lessonCount } = model;
  const demand = model.demand.reduce((most, d) => Math.max(most, d), 0);
  const width = (demand + 1) * (model.maxRun + model.parkGap + 1);
  return {
    roof: new Int32Array(lessonCount).fill(1 << 10),
    previous,
    cost: new Float64Array(width),
    nextCost: new Float64Array(width),
    choice: new Int16Array(width * lessonCount),
    cap: new Int32Array(lessonCount),
    row: new Int32Array(lessonCount),
    chunkCost: new Float64Array(lessonCount),
    lateCost: new Float64Array(lessonCount),
    minuteCost: new Float64Array(demand + 1),
    squarePrice: 0,
    splitFactor: 1,
    soloFactor: 1,
    lateFactor: 1,
    lessonPrice: Float64Array.from({ length: lessonCount }, (_, l) => l),
    work: 0,
  };
}

/**
 * Inserts an activity that stands nowhere. False when that breaks the plan: successors are placed and it cannot be
 * complete in time for them. Placing nothing is fine otherwise.
 */
export function insertActivity(
  model: Model,
  state: State,
  inserter: Inserter,
  i: number,
  carry: boolean,
): boolean {
  let from = model.first[i] ?? 0;
  let until = model.last[i] ?? -1;
  let needed = false;
  for (const p of model.preds[i] ?? []) {
    const done = state.doneAt[p] ?? never;
    if (done > from) from = done;
  }
  for (const j of model.succs[i] ?? []) {
    const start = state.firstAt[j] ?? never;
    if (start === never) continue;
    needed = true;
    if (start < until) until = start;
  }
  const demand = model.demand[i] ?? 0;
  inserter.work += 60;
  if (demand === 0) return true;
  if (from > until || !prepareLessons(model, state, inserter, i, from, until)) return !needed;
  const withRun = (model.runStart[i] ?? -1) >= 0;
  // without the run limit first: what it allows anyway is the best with it too
  plainProgramme(model, inserter, i, from, until);
  let wanted = chooseMinutes(model, inserter, i, needed, carry, false);
  if (wanted < 0) return false;
  if (wanted === 0) return true;
  readPlain(model, inserter, i, from, until, wanted);
  if (withRun && !isRunAllowed(model, inserter, i, from, until)) {
    runProgramme(model, inserter, i, from, until);
    wanted = chooseMinutes(model, inserter, i, needed, carry, true);
    if (wanted < 0) return false;
    if (wanted === 0) return true;
    readRun(model, inserter, i, from, until, wanted);
  }
  const { row } = inserter;
  for (let l = from; l <= until; l++) {
    const m = row[l] ?? 0;
    if (m > 0) setMinutes(model, state, i, l, m);
  }
  refreshActivity(model, state, i);
  return true;
}

/** Whether the lessons in `row` keep the run limit, counted from the run before lesson 0. */
function isRunAllowed(model: Model, inserter: Inserter, i: number, from: number, until: number): boolean {
  const { row } = inserter;
  const { maxRun, parkGap } = model;
  let run = from === 0 ? (model.runStart[i] ?? 0) : 0;
  let rest = 0;
  for (let l = from; l <= until; l++) {
    if ((row[l] ?? 0) === 0) {
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

/** Room and cost of a chunk in each lesson of the window; false when none has room. */
function prepareLessons(
  model: Model,
  state: State,
  inserter: Inserter,
  i: number,
  from: number,
  until: number,
): boolean {
  const { lessonCount, strandCount } = model;
  const { cap, chunkCost, lateCost, roof } = inserter;
  const strand = model.strand[i] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const maxChunk = model.maxChunk[i] ?? 0;
  const split = model.splitWeight * inserter.splitFactor * pWeight;
  const solo = model.soloWeight * inserter.soloFactor * pWeight;
  let open = false;
  for (let l = from; l <= until; l++) {
    cap[l] = 0;
    chunkCost[l] = split;
    lateCost[l] = 0;
    if ((state.blocks[l] ?? 0) >= (model.maxBlocks[l] ?? 0)) continue;
    const others = state.strandsIn[l] ?? 0;
    if ((state.strandBlocks[l * strandCount + strand] ?? 0) === 0) {
      if (others >= (model.maxStrands[l] ?? 0)) continue;
      if (others === 0) chunkCost[l] = split + solo;
      else if (others === 1) chunkCost[l] = split - solo;
    }
    const total = state.total[l] ?? 0;
    const squares = state.squares[l] ?? 0;
    const limit = model.squareLimit[l];
    const most = Math.min(maxChunk, (model.capacity[l] ?? 0) - total, roof[l] ?? 0);
    if (limit === undefined || most < minChunk) continue;
    let m = minChunk;
    while (m <= most && squares + m * m <= (limit[total + m] ?? -1)) m++;
    inserter.work += m - minChunk;
    if (m === minChunk) continue;
    cap[l] = m - 1;
    open = true;
  }
  inserter.work += 2 * (until - from + 1) + 10;
  if (!open) return false;
  const r = model.reviewOf[i] ?? -1;
  if (r >= 0 && model.lateWeight > 0) {
    const minutes = model.reviewMinutes[r] ?? 0;
    let fitting = lessonCount;
    let due = lessonCount;
    // backwards, so that the first fitting lesson from each due one is at hand
    for (let l = until; l >= from; l--) {
      const dueHere = model.dueAfter[l] ?? lessonCount;
      if (dueHere >= lessonCount) continue;
      while (due > dueHere) {
        due--;
        if (reviewFits(model, state, due, minutes)) fitting = due;
      }
      lateCost[l] = model.lateWeight * inserter.lateFactor * (fitting - dueHere) * pWeight;
    }
    inserter.work += lessonCount;
  }
  return true;
}

/** What each number of minutes of an activity costs in a lesson. */
function priceMinutes(model: Model, inserter: Inserter, i: number, l: number, most: number): void {
  const { minuteCost, previous, squarePrice } = inserter;
  const chunk = inserter.chunkCost[l] ?? 0;
  const price = inserter.lessonPrice[l] ?? 0;
  const before = previous === null ? -1 : (previous[i * model.lessonCount + l] ?? 0);
  for (let m = model.minChunk[i] ?? 1; m <= most; m++)
    minuteCost[m] = chunk + price * m + squarePrice * m * m + moved(before, m);
}

function plainProgramme(model: Model, inserter: Inserter, i: number, from: number, until: number): void {
  const { cost, choice, cap, lateCost, minuteCost } = inserter;
  const demand = model.demand[i] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const maxPartial = model.maxPartial[i] ?? 0;
  const width = demand + 1;
  for (let s = 1; s <= demand; s++) cost[s] = Number.POSITIVE_INFINITY;
  cost[0] = 0;
  let reach = 0;
  for (let l = from; l <= until; l++) {
    const row = l * width;
    for (let s = 0; s <= demand; s++) choice[row + s] = 0;
    const most = cap[l] ?? 0;
    if (most === 0) continue;
    priceMinutes(model, inserter, i, l, most);
    const late = lateCost[l] ?? 0;
    // complete here
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
    const top = Math.min(maxPartial, reach + most);
    for (let s = top; s >= minChunk; s--) {
      let least = cost[s] ?? 0;
      let leastMinutes = 0;
      const high = Math.min(most, s);
      for (let m = Math.max(minChunk, s - reach); m <= high; m++) {
        const here = (cost[s - m] ?? 0) + (minuteCost[m] ?? 0);
        if (here < least) {
          least = here;
          leastMinutes = m;
        }
      }
      if (leastMinutes > 0) {
        cost[s] = least;
        choice[row + s] = leastMinutes;
      }
    }
    inserter.work += (top - minChunk + 2) * (most - minChunk + 1) + width;
    if (top > reach) reach = top;
  }
}

/** The same with the state of the run: 0 … maxRun − 1 lessons in a row, then parkGap … 1 lessons of rest. */
function runProgramme(model: Model, inserter: Inserter, i: number, from: number, until: number): void {
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
  for (let l = from; l <= until; l++) {
    const row = l * width;
    for (let k = 0; k < width; k++) {
      choice[row + k] = 0;
      nextCost[k] = Number.POSITIVE_INFINITY;
    }
    // a choice above 0 is minutes placed; otherwise nothing is placed and minus it is the run state before
    const most = cap[l] ?? 0;
    priceMinutes(model, inserter, i, l, most);
    for (let s = 0; s <= demand; s++) {
      if (s > maxPartial && s < demand) continue;
      for (let run = 0; run < states; run++) {
        const here = cost[s * states + run] ?? 0;
        if (here === Number.POSITIVE_INFINITY) continue;
        const idle = s * states + afterRest(run, maxRun);
        if (here < (nextCost[idle] ?? 0)) {
          nextCost[idle] = here;
          choice[row + idle] = -run;
        }
        if (run >= maxRun || most === 0) continue;
        const nextRun = run + 1 < maxRun ? run + 1 : states - 1;
        const high = Math.min(most, demand - s);
        for (let m = minChunk; m <= high; m++) {
          const sum = s + m;
          if (sum > maxPartial && sum < demand) continue;
          const there = here + (minuteCost[m] ?? 0) + (sum === demand ? (lateCost[l] ?? 0) : 0);
          const k = sum * states + nextRun;
          if (there >= (nextCost[k] ?? 0)) continue;
          nextCost[k] = there;
          choice[row + k] = m;
        }
        inserter.work += high - minChunk + 3;
      }
    }
    [cost, nextCost] = [nextCost, cost];
    inserter.work += width;
  }
  if (cost !== inserter.cost) inserter.cost.set(cost.subarray(0, width));
}

const afterRest = (run: number, maxRun: number): number => (run > maxRun ? run - 1 : 0);

const moved = (before: number, m: number): number =>
  before < 0 ? 0 : (Math.abs(m - before) - before) * moveWeight;

/** How many minutes to place: as many as possible of core work that counts, else what costs least. −1: cannot be. */
function chooseMinutes(
  model: Model,
  inserter: Inserter,
  i: number,
  needed: boolean,
  carry: boolean,
  withRun: boolean,
): number {
  const { cost } = inserter;
  const states = withRun ? model.maxRun + model.parkGap : 1;
  const demand = model.demand[i] ?? 0;
  const costOf = (s: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let run = 0; run < states; run++) least = Math.min(least, cost[s * states + run] ?? 0);
    return least;
  };
  if (costOf(demand) < Number.POSITIVE_INFINITY && (needed || (carry && model.carries[i] === 1)))
    return demand;
  if (needed) return -1;
  const maxPartial = model.maxPartial[i] ?? 0;
  if ((model.weight[i] ?? 0) > 0) {
    if (costOf(demand) < Number.POSITIVE_INFINITY) return demand;
    for (let s = maxPartial; s > 0; s--) if (costOf(s) < Number.POSITIVE_INFINITY) return s;
    return 0;
  }
  let best = 0;
  let least = (model.value[i] ?? 0) * pWeight;
  for (let s = 1; s <= demand; s++) {
    if (s > maxPartial && s < demand) continue;
    const price =
      costOf(s) -
      model.splitWeight * inserter.splitFactor * pWeight +
      (s < demand ? (model.value[i] ?? 0) * pWeight : 0);
    if (price >= least) continue;
    least = price;
    best = s;
  }
  return best;
}

/** Reads the way to `wanted` minutes off the programme into `row`. */
function readPlain(
  model: Model,
  inserter: Inserter,
  i: number,
  from: number,
  until: number,
  wanted: number,
): void {
  const { row, choice } = inserter;
  const width = (model.demand[i] ?? 0) + 1;
  let s = wanted;
  for (let l = until; l >= from; l--) {
    const m = choice[l * width + s] ?? 0;
    row[l] = m;
    s -= m;
  }
}

function readRun(
  model: Model,
  inserter: Inserter,
  i: number,
  from: number,
  until: number,
  wanted: number,
): void {
  const { cost, choice, row } = inserter;
  const { maxRun, parkGap } = model;
  const states = maxRun + parkGap;
  const width = ((model.demand[i] ?? 0) + 1) * states;
  let s = wanted;
  let run = 0;
  for (let k = 1; k < states; k++) if ((cost[s * states + k] ?? 0) < (cost[s * states + run] ?? 0)) run = k;
  for (let l = until; l >= from; l--) {
    const m = choice[l * width + s * states + run] ?? 0;
    row[l] = Math.max(0, m);
    if (m > 0) {
      s -= m;
      run = run === states - 1 ? maxRun - 1 : run - 1;
    } else run = -m;
  }
}
