// Whole chunks change places: one goes to another lesson, or two swap theirs. Where lessons are full of blocks this is
// what a ruin of two would find, at a fraction of its cost. U stays as it is, and so does the number of chunks.

import { type Random, randomInteger } from '#core';
import { insertReview } from './insert-review.ts';
import type { ChunkList } from './minute-moves.ts';
import type { Model } from './model.ts';
import { isRunAllowed } from './run-programme.ts';
import {
  dueOf,
  never,
  refreshActivity,
  type State,
  setMinutes,
  setReview,
  startStep,
  undoStep,
} from './state.ts';

/** What the last move changed in P and E. */
export interface SwapChange {
  penalty: number;
  early: number;
  // positions in the list of what moved, −1 for whole lessons; the second −1 when alone; and their new cells
  a: number;
  b: number;
  cellA: number;
  cellB: number;
}

/** Says in the list where the chunks of the last move stand now. */
export function noteSwap(list: ChunkList, { a, b, cellA, cellB }: SwapChange): void {
  list.cells[a] = cellA;
  if (b >= 0) list.cells[b] = cellB;
}

/** Makes one random move if it is allowed; false when not, with everything as it was. `undoStep` takes it back. */
export function trySwap(
  model: Model,
  state: State,
  random: Random,
  list: ChunkList,
  moveShare: number,
  withReviews: boolean,
  change: SwapChange,
): boolean {
  const { lessonCount } = model;
  const a = Math.floor(random.next() * list.length);
  const i = list.activityOf[a] ?? 0;
  const from = (list.cells[a] ?? 0) - i * lessonCount;
  const mi = state.minutes[list.cells[a] ?? 0] ?? 0;
  let b = -1;
  let j = -1;
  let to: number;
  let mj = 0;
  if (random.next() < moveShare) {
    to = randomInteger(random, model.first[i] ?? 0, model.last[i] ?? 0);
    if ((state.blocks[to] ?? 0) >= (model.maxBlocks[to] ?? 0)) return false;
  } else {
    b = Math.floor(random.next() * list.length);
    const cell = list.cells[b] ?? 0;
    j = list.activityOf[b] ?? 0;
    to = cell - j * lessonCount;
    mj = state.minutes[cell] ?? 0;
    if (j === i || (state.minutes[j * lessonCount + from] ?? 0) > 0) return false;
    if (from < (model.first[j] ?? 0) || from > (model.last[j] ?? 0)) return false;
    if (to < (model.first[i] ?? 0) || to > (model.last[i] ?? 0)) return false;
  }
  if (to === from || (state.minutes[i * lessonCount + to] ?? 0) > 0) return false;
  startStep(state);
  const soloBefore = soloOf(state, from) + soloOf(state, to);
  let late = withReviews ? -lift(model, state, i) - (j < 0 ? 0 : lift(model, state, j)) : 0;
  setMinutes(model, state, i, from, 0);
  setMinutes(model, state, i, to, mi);
  if (j >= 0) {
    setMinutes(model, state, j, to, 0);
    setMinutes(model, state, j, from, mj);
  }
  if (!fits(model, state, from) || !fits(model, state, to)) {
    undoStep(model, state);
    return false;
  }
  refreshActivity(model, state, i);
  if (j >= 0) refreshActivity(model, state, j);
  if (!isInOrder(model, state, i) || (j >= 0 && !isInOrder(model, state, j))) {
    undoStep(model, state);
    return false;
  }
  if (withReviews) late += settle(model, state, i) + (j < 0 ? 0 : settle(model, state, j));
  change.penalty =
    model.lateWeight * late + model.soloWeight * (soloOf(state, from) + soloOf(state, to) - soloBefore);
  change.a = a;
  change.b = b;
  change.cellA = i * lessonCount + to;
  change.cellB = j * lessonCount + from;
  change.early = (mi - mj) * (to - from);
  return true;
}

/** Exchanges all the work of two lessons, if that is allowed; as `trySwap`. The list is stale afterwards. */
export function trySwapLessons(
  model: Model,
  state: State,
  random: Random,
  withReviews: boolean,
  change: SwapChange,
): boolean {
  const { lessonCount, activityCount } = model;
  if (lessonCount < 2) return false;
  const a = randomInteger(random, 0, lessonCount - 1);
  const b = random.next() < 0.5 ? a + 1 : randomInteger(random, 0, lessonCount - 1);
  if (a === b || b >= lessonCount) return false;
  for (let i = 0; i < activityCount; i++) {
    const inA = state.minutes[i * lessonCount + a] ?? 0;
    const inB = state.minutes[i * lessonCount + b] ?? 0;
    if (inA > 0 && (b < (model.first[i] ?? 0) || b > (model.last[i] ?? 0))) return false;
    if (inB > 0 && (a < (model.first[i] ?? 0) || a > (model.last[i] ?? 0))) return false;
  }
  startStep(state);
  const soloBefore = soloOf(state, a) + soloOf(state, b);
  let late = 0;
  change.early = 0;
  for (let i = 0; i < activityCount; i++) {
    const inA = state.minutes[i * lessonCount + a] ?? 0;
    const inB = state.minutes[i * lessonCount + b] ?? 0;
    if (inA === inB) continue;
    if (withReviews) late -= lift(model, state, i);
    setMinutes(model, state, i, a, inB);
    setMinutes(model, state, i, b, inA);
    change.early += (inA - inB) * (b - a);
    refreshActivity(model, state, i);
  }
  let allowed =
    state.journalLength > 0 &&
    fits(model, state, a) &&
    fits(model, state, b) &&
    (state.blocks[a] ?? 0) <= (model.maxBlocks[a] ?? 0) &&
    (state.blocks[b] ?? 0) <= (model.maxBlocks[b] ?? 0);
  for (let k = state.journalLength - 2; allowed && k >= 0; k -= 2) {
    const cell = state.journal[k] ?? 0;
    if (cell >= 0) allowed = isInOrder(model, state, state.activityOf[cell] ?? 0);
  }
  if (!allowed) {
    undoStep(model, state);
    return false;
  }
  if (withReviews) {
    const { journalLength } = state;
    let before = -1;
    for (let k = 0; k < journalLength; k += 2) {
      const cell = state.journal[k] ?? 0;
      const i = state.activityOf[cell] ?? 0;
      if (cell < 0 || i === before) continue;
      before = i;
      late += settle(model, state, i);
    }
  }
  change.a = -1;
  change.penalty =
    model.lateWeight * late + model.soloWeight * (soloOf(state, a) + soloOf(state, b) - soloBefore);
  return true;
}

const soloOf = (state: State, l: number): number => (state.strandsIn[l] === 1 ? 1 : 0);

function fits(model: Model, state: State, l: number): boolean {
  const total = state.total[l] ?? 0;
  return (
    total <= (model.capacity[l] ?? 0) &&
    (state.squares[l] ?? 0) <= (model.squareLimit[l]?.[total] ?? -1) &&
    (state.strandsIn[l] ?? 0) <= (model.maxStrands[l] ?? 0)
  );
}

/** Whether an activity stands after what it rests on, before what rests on it, and keeps the run limit. */
function isInOrder(model: Model, state: State, i: number): boolean {
  const firstAt = state.firstAt[i] ?? never;
  const doneAt = state.doneAt[i] ?? never;
  for (const p of model.preds[i] ?? []) if ((state.doneAt[p] ?? never) > firstAt) return false;
  for (const s of model.succs[i] ?? [])
    if ((state.firstAt[s] ?? never) !== never && (state.firstAt[s] ?? never) < doneAt) return false;
  if ((model.runStart[i] ?? -1) < 0) return true;
  return isRunAllowed(model, state.minutes, i * model.lessonCount, i, 0, model.lessonCount - 1);
}

/** Takes out an activity's revisit and returns how late it was, weighted. */
function lift(model: Model, state: State, i: number): number {
  const r = model.reviewOf[i] ?? -1;
  if (r < 0) return 0;
  const late = lateness(model, state, r);
  if ((state.reviewAt[r] ?? never) !== never) setReview(model, state, r, never);
  return late;
}

/** Puts the revisit where it goes now and returns how late it is. */
function settle(model: Model, state: State, i: number): number {
  const r = model.reviewOf[i] ?? -1;
  if (r < 0) return 0;
  insertReview(model, state, r);
  return lateness(model, state, r);
}

function lateness(model: Model, state: State, r: number): number {
  const due = dueOf(model, state, r);
  if (due >= model.lessonCount) return 0;
  return (model.reviewWeight[r] ?? 0) * (Math.min(state.reviewAt[r] ?? never, model.lessonCount) - due);
}
