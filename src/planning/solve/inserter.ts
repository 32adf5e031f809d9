// What one insertion works on: room and price of a chunk in each lesson, and the arrays of its dynamic programme.

import { reviewFits } from './insert-review.ts';
import type { Model } from './model.ts';
import type { State } from './state.ts';

/** Weight of P against E inside one activity, where E stays below 60 lessons × 600 minutes. */
export const pWeight = 1e6;
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
  /** Least price from each lesson on. */
  readonly leastPrice: Float64Array;
  hasOddPrices: boolean;
  // of the insertion at hand: lessons prepared so far, first lesson a revisit fits, last lesson looked at
  preparedTo: number;
  fitting: number;
  stop: number;
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
    leastPrice: Float64Array.from({ length: lessonCount + 1 }, (_, l) => l),
    hasOddPrices: false,
    preparedTo: -1,
    fitting: 0,
    stop: 0,
    work: 0,
  };
}

/** Room and cost of a chunk in one lesson, once per insertion, lessons in order. */
export function prepareLesson(model: Model, state: State, inserter: Inserter, i: number, l: number): void {
  if (l <= inserter.preparedTo) return;
  inserter.preparedTo = l;
  inserter.work += 2;
  const { cap } = inserter;
  cap[l] = 0;
  if ((state.blocks[l] ?? 0) >= (model.maxBlocks[l] ?? 0)) return;
  const total = state.total[l] ?? 0;
  const minChunk = model.minChunk[i] ?? 1;
  const most = Math.min(model.maxChunk[i] ?? 0, (model.capacity[l] ?? 0) - total, inserter.roof[l] ?? 0);
  if (most < minChunk) return;
  const others = state.strandsIn[l] ?? 0;
  let solo = 0;
  if ((state.strandBlocks[l * model.strandCount + (model.strand[i] ?? 0)] ?? 0) === 0) {
    if (others >= (model.maxStrands[l] ?? 0)) return;
    if (others === 0) solo = 1;
    else if (others === 1) solo = -1;
  }
  const limit = model.squareLimit[l];
  if (limit === undefined) return;
  const squares = state.squares[l] ?? 0;
  let m = minChunk;
  while (m <= most && squares + m * m <= (limit[total + m] ?? -1)) m++;
  inserter.work += m - minChunk;
  if (m === minChunk) return;
  cap[l] = m - 1;
  inserter.chunkCost[l] =
    (model.splitWeight * inserter.splitFactor + solo * model.soloWeight * inserter.soloFactor) * pWeight;
  inserter.lateCost[l] = 0;
  const r = model.reviewOf[i] ?? -1;
  if (r < 0 || inserter.lateFactor === 0 || model.lateWeight === 0) return;
  const due = model.dueAfter[l] ?? model.lessonCount;
  if (due >= model.lessonCount) return;
  // later lessons have later due ones, so the first that fits only moves on
  const minutes = model.reviewMinutes[r] ?? 0;
  let fitting = Math.max(due, inserter.fitting);
  while (fitting < model.lessonCount && !reviewFits(model, state, fitting, minutes)) {
    fitting++;
    inserter.work++;
  }
  inserter.fitting = fitting;
  inserter.lateCost[l] = model.lateWeight * inserter.lateFactor * (fitting - due) * pWeight;
}

/** What each number of minutes of an activity costs in a lesson. */
export function priceMinutes(model: Model, inserter: Inserter, i: number, l: number, most: number): void {
  const { minuteCost, previous, squarePrice } = inserter;
  const chunk = inserter.chunkCost[l] ?? 0;
  const price = inserter.lessonPrice[l] ?? 0;
  const before = previous === null ? -1 : (previous[i * model.lessonCount + l] ?? 0);
  for (let m = model.minChunk[i] ?? 1; m <= most; m++)
    minuteCost[m] = chunk + price * m + squarePrice * m * m + moved(before, m);
}

const moved = (before: number, m: number): number =>
  before < 0 ? 0 : (Math.abs(m - before) - before) * moveWeight;

/** Least that the chunks still to come of an incomplete activity can cost, minutes aside. */
export function leastToCome(model: Model, inserter: Inserter, i: number): number {
  const demand = model.demand[i] ?? 0;
  const chunk =
    (model.splitWeight * inserter.splitFactor - model.soloWeight * Math.abs(inserter.soloFactor)) * pWeight;
  const chunks = chunk < 0 ? chunk * Math.floor(demand / (model.minChunk[i] ?? 1)) : chunk;
  return chunks - (inserter.previous === null ? 0 : 2 * demand * moveWeight);
}

/** Least cost of so many minutes over the states of the run. */
export function leastOf(cost: Float64Array, s: number, states: number): number {
  let least = cost[s * states] ?? 0;
  for (let k = s * states + 1; k < (s + 1) * states; k++) {
    const here = cost[k] ?? 0;
    if (here < least) least = here;
  }
  return least;
}
