// What the two threads of the planner share: a few numbers that say how far a search is, and room for a problem and a plan.

import { type KernelPlan, type PackedModel, type SearchOrder, scoreLength } from '#planning';

/** How far a search is, in the first number of `control`. */
export const state = { idle: 0, asked: 1, taken: 2, done: 3 } as const;
/** State, whole numbers of the problem, its reals, cells, revisits, steps, seed, rounds. */
const controlLength = 8;
/** Bytes for a problem or a plan. A problem that needs more is searched by one thread. */
const room = 4 << 20;

export interface SharedSearch {
  readonly control: Int32Array;
  readonly data: SharedArrayBuffer;
}

export function createSharedSearch(): SharedSearch {
  return {
    control: new Int32Array(new SharedArrayBuffer(controlLength * 4)),
    data: new SharedArrayBuffer(room),
  };
}

/** Writes a search that is asked for; false when there is no room for it. */
export function writeOrder(
  { control, data }: SharedSearch,
  { ints, reals }: PackedModel,
  order: SearchOrder,
): boolean {
  const plan = scoreLength * 8 + (order.cells + order.reviews) * 4;
  if (Math.max(reals.byteLength + ints.byteLength, plan) > room) return false;
  new Float64Array(data, 0, reals.length).set(reals);
  new Int32Array(data, reals.byteLength, ints.length).set(ints);
  control.set([ints.length, reals.length, order.cells, order.reviews, order.steps, order.seed], 1);
  return true;
}

export function readOrder({ control, data }: SharedSearch): [PackedModel, SearchOrder] {
  const [, intCount = 0, realCount = 0, cells = 0, reviews = 0, steps = 0, seed = 0] = control;
  const reals = new Float64Array(data, 0, realCount);
  return [
    { ints: new Int32Array(data, reals.byteLength, intCount), reals },
    { cells, reviews, steps, seed },
  ];
}

export function writePlan({ control, data }: SharedSearch, plan: KernelPlan): void {
  new Float64Array(data, 0, scoreLength).set(plan.score);
  const { minutes, reviewAt } = plan;
  new Int32Array(data, scoreLength * 8, minutes.length).set(minutes);
  new Int32Array(data, scoreLength * 8 + minutes.byteLength, reviewAt.length).set(reviewAt);
  control[7] = plan.rounds;
}

export function readPlan({ control, data }: SharedSearch, { cells, reviews }: SearchOrder): KernelPlan {
  return {
    score: new Float64Array(data, 0, scoreLength).slice(),
    minutes: new Int32Array(data, scoreLength * 8, cells).slice(),
    reviewAt: new Int32Array(data, scoreLength * 8 + cells * 4, reviews).slice(),
    rounds: control[7] ?? 0,
  };
}
