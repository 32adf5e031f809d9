// A plan under construction: minutes by activity and lesson, the lesson of each revisit, and the sums the search needs,
// kept up to date cell by cell, with a journal to take a whole step back.

import type { Model } from './model.ts';

/** Stands for "not placed", "not complete". */
export const never = 1 << 20;

export interface State {
  /** Minutes, activity-major: `minutes[i * lessonCount + l]`. */
  readonly minutes: Int32Array;
  readonly reviewAt: Int32Array;
  // by lesson
  readonly total: Int32Array;
  readonly squares: Int32Array;
  readonly opening: Int32Array;
  readonly blocks: Int32Array;
  readonly strandsIn: Int32Array;
  /** Blocks by lesson and strand: `strandBlocks[l * strandCount + s]`. */
  readonly strandBlocks: Int32Array;
  // by activity
  readonly sum: Int32Array;
  readonly chunks: Int32Array;
  readonly firstAt: Int32Array;
  readonly doneAt: Int32Array;
  /** Activity and lesson of each cell: looked up, since a division costs more. */
  readonly activityOf: Int32Array;
  readonly lessonOf: Int32Array;
  /** Cells changed since `startStep`: a cell or −1 − review, and what stood there. */
  readonly journal: Int32Array;
  journalLength: number;
}

export function createState(model: Model): State {
  const { lessonCount, activityCount, strandCount, reviewCount } = model;
  const state: State = {
    minutes: new Int32Array(activityCount * lessonCount),
    reviewAt: new Int32Array(reviewCount).fill(never),
    total: Int32Array.from(model.recap),
    squares: model.recap.map((recap) => recap * recap),
    opening: Int32Array.from(model.recap),
    blocks: new Int32Array(lessonCount),
    strandsIn: new Int32Array(lessonCount),
    strandBlocks: new Int32Array(lessonCount * strandCount),
    sum: new Int32Array(activityCount),
    chunks: new Int32Array(activityCount),
    firstAt: new Int32Array(activityCount).fill(never),
    doneAt: new Int32Array(activityCount),
    activityOf: Int32Array.from({ length: activityCount * lessonCount }, (_, cell) =>
      Math.trunc(cell / lessonCount),
    ),
    lessonOf: Int32Array.from({ length: activityCount * lessonCount }, (_, cell) => cell % lessonCount),
    journal: new Int32Array(16 * (activityCount * lessonCount + reviewCount) + 64),
    journalLength: 0,
  };
  for (let i = 0; i < activityCount; i++) refreshActivity(model, state, i);
  return state;
}

export function startStep(state: State): void {
  state.journalLength = 0;
}

/** Puts back everything changed since `startStep`. */
export function undoStep(model: Model, state: State): void {
  const { journal } = state;
  for (let k = state.journalLength - 2; k >= 0; k -= 2) {
    const cell = journal[k] ?? 0;
    const before = journal[k + 1] ?? 0;
    if (cell < 0) writeReview(model, state, -1 - cell, before);
    else writeCell(model, state, cell, before);
  }
  let refreshed = -1;
  for (let k = 0; k < state.journalLength; k += 2) {
    const cell = journal[k] ?? 0;
    const i = cell < 0 ? -1 : (state.activityOf[cell] ?? 0);
    // the cells of an activity mostly stand together
    if (i < 0 || i === refreshed) continue;
    refreshed = i;
    refreshActivity(model, state, i);
  }
  state.journalLength = 0;
}

/** Sets the minutes of one activity in one lesson; call `refreshActivity` when its row is done. */
export function setMinutes(model: Model, state: State, i: number, l: number, m: number): void {
  const cell = i * model.lessonCount + l;
  remember(state, cell, state.minutes[cell] ?? 0);
  writeCell(model, state, cell, m);
}

/** Moves a revisit to a lesson, or to `never`. */
export function setReview(model: Model, state: State, r: number, l: number): void {
  remember(state, -1 - r, state.reviewAt[r] ?? never);
  writeReview(model, state, r, l);
}

/** Takes an activity out of all its lessons, and its revisit with it. */
export function removeActivity(model: Model, state: State, i: number): void {
  if ((state.chunks[i] ?? 0) > 0) {
    for (let cell = i * model.lessonCount; (state.chunks[i] ?? 0) > 0; cell++) {
      const m = state.minutes[cell] ?? 0;
      if (m === 0) continue;
      remember(state, cell, m);
      writeCell(model, state, cell, 0);
    }
    refreshActivity(model, state, i);
    const r = model.reviewOf[i] ?? -1;
    if (r >= 0 && (state.reviewAt[r] ?? never) !== never) setReview(model, state, r, never);
  }
}

/** First and completing lesson of an activity, from its row. */
export function refreshActivity(model: Model, state: State, i: number): void {
  const { lessonCount } = model;
  const demand = model.demand[i] ?? 0;
  let sum = 0;
  let firstAt = never;
  let doneAt = demand === 0 && lessonCount > 0 ? 0 : never;
  let left = state.chunks[i] ?? 0;
  if (left > 0) {
    const row = i * lessonCount;
    for (let l = 0; left > 0; l++) {
      const m = state.minutes[row + l] ?? 0;
      if (m === 0) continue;
      left--;
      if (firstAt === never) firstAt = l;
      sum += m;
      if (sum >= demand && doneAt === never) doneAt = l;
    }
  }
  state.firstAt[i] = firstAt;
  state.doneAt[i] = doneAt;
}

/** The lesson a revisit falls due in; `lessonCount` or `never` when it is not wanted within these lessons. */
export function dueOf(model: Model, state: State, r: number): number {
  const due = model.reviewDue[r] ?? -1;
  if (due >= 0) return due;
  const done = state.doneAt[model.reviewActivity[r] ?? 0] ?? never;
  return done === never ? never : (model.dueAfter[done] ?? never);
}

/** Makes the state that of a plan kept aside. */
export function restorePlan(model: Model, state: State, minutes: Int32Array, reviewAt: Int32Array): void {
  for (let cell = 0; cell < minutes.length; cell++) writeCell(model, state, cell, minutes[cell] ?? 0);
  for (let i = 0; i < model.activityCount; i++) refreshActivity(model, state, i);
  for (let r = 0; r < reviewAt.length; r++) writeReview(model, state, r, reviewAt[r] ?? never);
  state.journalLength = 0;
}

function remember(state: State, cell: number, before: number): void {
  state.journal[state.journalLength] = cell;
  state.journal[state.journalLength + 1] = before;
  state.journalLength += 2;
}

function writeCell(model: Model, state: State, cell: number, m: number): void {
  const { strandCount } = model;
  const before = state.minutes[cell] ?? 0;
  if (before === m) return;
  const i = state.activityOf[cell] ?? 0;
  const l = state.lessonOf[cell] ?? 0;
  state.minutes[cell] = m;
  state.total[l] = (state.total[l] ?? 0) + m - before;
  state.squares[l] = (state.squares[l] ?? 0) + m * m - before * before;
  state.sum[i] = (state.sum[i] ?? 0) + m - before;
  if (before > 0 && m > 0) return;
  const sign = m > 0 ? 1 : -1;
  state.chunks[i] = (state.chunks[i] ?? 0) + sign;
  state.blocks[l] = (state.blocks[l] ?? 0) + sign;
  const at = l * strandCount + (model.strand[i] ?? 0);
  const blocks = (state.strandBlocks[at] ?? 0) + sign;
  state.strandBlocks[at] = blocks;
  if (sign > 0 ? blocks === 1 : blocks === 0) state.strandsIn[l] = (state.strandsIn[l] ?? 0) + sign;
}

function writeReview(model: Model, state: State, r: number, l: number): void {
  const minutes = model.reviewMinutes[r] ?? 0;
  const before = state.reviewAt[r] ?? never;
  if (before !== never) addOpening(state, before, -minutes);
  state.reviewAt[r] = l;
  if (l !== never) addOpening(state, l, minutes);
}

function addOpening(state: State, l: number, minutes: number): void {
  const before = state.opening[l] ?? 0;
  const after = before + minutes;
  state.opening[l] = after;
  state.total[l] = (state.total[l] ?? 0) + minutes;
  state.squares[l] = (state.squares[l] ?? 0) + after * after - before * before;
}
