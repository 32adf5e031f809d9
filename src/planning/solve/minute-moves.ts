// Small moves between chunks that stay where they are: a few minutes of an activity from one of its lessons to another,
// making room by pushing a neighbour's minutes on in turn. Many of these cost as much as one ruin, and they find the
// balanced sizes that a lesson's limit on the sum of squares rewards.

import type { Random } from '#core';
import type { Model } from './model.ts';
import type { Score } from './score.ts';
import type { State } from './state.ts';

export interface ChunkList {
  /** Cells with minutes, by activity. */
  readonly cells: Int32Array;
  length: number;
  readonly activityOf: Int32Array;
  readonly startOf: Int32Array;
  /** Positions in `cells` by lesson: `inLesson[l * activityCount + k]`, k < `lessonSize[l]`. */
  readonly inLesson: Int32Array;
  readonly lessonSize: Int32Array;
}

export function createChunkList(model: Model): ChunkList {
  const { activityCount, lessonCount } = model;
  return {
    cells: new Int32Array(activityCount * lessonCount),
    length: 0,
    activityOf: new Int32Array(activityCount * lessonCount),
    startOf: new Int32Array(activityCount),
    inLesson: new Int32Array(activityCount * lessonCount),
    lessonSize: new Int32Array(lessonCount),
  };
}

export function listChunks(model: Model, state: State, list: ChunkList): void {
  const { lessonCount, activityCount } = model;
  list.lessonSize.fill(0);
  let length = 0;
  for (let i = 0; i < activityCount; i++) {
    list.startOf[i] = length;
    let left = state.chunks[i] ?? 0;
    for (let l = 0; left > 0; l++) {
      if ((state.minutes[i * lessonCount + l] ?? 0) === 0) continue;
      left--;
      list.cells[length] = i * lessonCount + l;
      list.activityOf[length] = i;
      const size = list.lessonSize[l] ?? 0;
      list.inLesson[l * activityCount + size] = length;
      list.lessonSize[l] = size + 1;
      length++;
    }
  }
  list.length = length;
}

/**
 * Tries `count` moves on the state, keeping those that do not make it worse, or with luck a little worse, and keeps
 * `score` up to date. No chunk appears or goes, no activity becomes complete or incomplete, so P stays as it is.
 */
export function moveMinutes(
  model: Model,
  state: State,
  random: Random,
  list: ChunkList,
  score: Score,
  { heatU, heatE, count }: { readonly heatU: number; readonly heatE: number; readonly count: number },
): void {
  if (list.length < 2) return;
  const { activityCount, lessonCount } = model;
  for (let n = 0; n < count; n++) {
    const a = Math.floor(random.next() * list.length);
    const i = list.activityOf[a] ?? 0;
    const to = list.cells[a] ?? 0;
    const draw = random.next();
    const k = 1 + Math.floor(draw * draw * 5);
    if ((state.minutes[to] ?? 0) + k > (model.maxChunk[i] ?? 0)) continue;
    const lessonTo = to - i * lessonCount;
    const from = sourceOf(model, state, random, list, i, a, k);
    if (from === -2) continue;
    let lossU = from < 0 ? -(model.weight[i] ?? 0) * k : 0;
    let lossE = k * lessonTo - (from < 0 ? 0 : k * (from - i * lessonCount));
    shift(model, state, i, to, k);
    if (from >= 0) shift(model, state, i, from, -k);
    let pushed = -1;
    let landed = -1;
    let j = 0;
    let back = 0;
    if (!fits(model, state, lessonTo)) {
      // push a neighbour out of the way
      const size = list.lessonSize[lessonTo] ?? 0;
      const b = list.inLesson[lessonTo * activityCount + Math.floor(random.next() * size)] ?? 0;
      j = list.activityOf[b] ?? 0;
      back = 1 + Math.floor(random.next() * (k + 1));
      const cell = list.cells[b] ?? 0;
      landed =
        j === i || (state.minutes[cell] ?? 0) - back < (model.minChunk[j] ?? 0)
          ? -2
          : goalOf(model, state, random, list, j, b, back);
      if (landed !== -2) {
        pushed = cell;
        shift(model, state, j, pushed, -back);
        lossE -= back * lessonTo;
        if (landed >= 0) {
          shift(model, state, j, landed, back);
          lossE += back * (landed - j * lessonCount);
        } else lossU += (model.weight[j] ?? 0) * back;
      }
    }
    const allowed =
      landed !== -2 &&
      fits(model, state, lessonTo) &&
      (from < 0 || fits(model, state, from - i * lessonCount)) &&
      (landed < 0 || fits(model, state, landed - j * lessonCount));
    if (allowed && isKept(random, lossU, lossE, heatU, heatE)) {
      score[0] = (score[0] ?? 0) + lossU;
      score[2] = (score[2] ?? 0) + lossE;
      continue;
    }
    if (landed >= 0) shift(model, state, j, landed, -back);
    if (pushed >= 0) shift(model, state, j, pushed, back);
    if (from >= 0) shift(model, state, i, from, k);
    shift(model, state, i, to, -k);
  }
}

/** Where the minutes come from: another chunk of the activity, or −1 for minutes left undone; −2: nowhere. */
function sourceOf(
  model: Model,
  state: State,
  random: Random,
  list: ChunkList,
  i: number,
  a: number,
  k: number,
): number {
  const chunks = state.chunks[i] ?? 0;
  const sum = state.sum[i] ?? 0;
  if (sum < (model.demand[i] ?? 0) && (chunks === 1 || random.next() < 0.5))
    return sum + k <= (model.maxPartial[i] ?? 0) ? -1 : -2;
  if (chunks < 2) return -2;
  const start = list.startOf[i] ?? 0;
  let other = start + Math.floor(random.next() * (chunks - 1));
  if (other >= a) other++;
  const cell = list.cells[other] ?? 0;
  return (state.minutes[cell] ?? 0) - k >= (model.minChunk[i] ?? 0) ? cell : -2;
}

/** Where pushed minutes go: another chunk of the activity, or −1 to leave them undone; −2: nowhere. */
function goalOf(
  model: Model,
  state: State,
  random: Random,
  list: ChunkList,
  j: number,
  b: number,
  back: number,
): number {
  const chunks = state.chunks[j] ?? 0;
  if ((state.sum[j] ?? 0) < (model.demand[j] ?? 0) && (chunks === 1 || random.next() < 0.5)) return -1;
  if (chunks < 2) return -2;
  const start = list.startOf[j] ?? 0;
  let other = start + Math.floor(random.next() * (chunks - 1));
  if (other >= b) other++;
  const cell = list.cells[other] ?? 0;
  return (state.minutes[cell] ?? 0) + back <= (model.maxChunk[j] ?? 0) ? cell : -2;
}

function shift(model: Model, state: State, i: number, cell: number, by: number): void {
  const l = cell - i * model.lessonCount;
  const before = state.minutes[cell] ?? 0;
  state.minutes[cell] = before + by;
  state.total[l] = (state.total[l] ?? 0) + by;
  state.squares[l] = (state.squares[l] ?? 0) + by * (2 * before + by);
  state.sum[i] = (state.sum[i] ?? 0) + by;
}

function fits(model: Model, state: State, l: number): boolean {
  const total = state.total[l] ?? 0;
  return (
    total <= (model.capacity[l] ?? 0) && (state.squares[l] ?? 0) <= (model.squareLimit[l]?.[total] ?? -1)
  );
}

function isKept(random: Random, lossU: number, lossE: number, heatU: number, heatE: number): boolean {
  if (lossU < -1e-9) return true;
  if (lossU > 1e-9) return heatU > 0 && random.next() < Math.exp(-lossU / heatU);
  return lossE <= 0 || (heatE > 0 && random.next() < Math.exp(-lossE / heatE));
}
