// Small moves between chunks that stay where they are: a few minutes of an activity from one of its lessons to another,
// making room by pushing a neighbour's minutes on in turn. Many of these cost as much as one ruin, and they find the
// balanced sizes that a lesson's limit on the sum of squares rewards.

import { cells, inLesson, lessonSize, listed, listedActivity, listStart } from './chunk-list.ts';
import { addWork } from './clock.ts';
import { addInt, int, real, setReal } from './memory.ts';
import {
  activityCount,
  demandOf,
  lessonCount,
  maxChunkOf,
  maxPartialOf,
  minChunkOf,
  weightOf,
} from './model.ts';
import { draw, drawIndex } from './random.ts';
import { chunks, minutes, minutesFit, squares, sum, total } from './state.ts';

/** Stands for minutes left undone, and for nowhere. */
const undone: i32 = -1;
const nowhere: i32 = -2;
/** Work of each move tried. */
const moveWork: i32 = 35;

/**
 * Tries `count` moves on the state, keeping those that do not make it worse, or with luck a little worse, and keeps
 * `score` up to date. No chunk appears or goes, no activity becomes complete or incomplete, so P stays as it is.
 */
export function moveMinutes(score: i32, heatU: f64, heatE: f64, count: i32): void {
  if (listed < 2) return;
  addWork(moveWork * count);
  for (let n = 0; n < count; n++) {
    const a = drawIndex(listed);
    const i = int(listedActivity, a);
    const to = int(cells, a);
    const number = draw();
    const k = 1 + i32(number * number * 3.8);
    if (int(minutes, to) + k > int(maxChunkOf, i)) continue;
    const lessonTo = to - i * lessonCount;
    const from = sourceOf(i, a, k);
    if (from === nowhere) continue;
    let lossU = from < 0 ? -real(weightOf, i) * f64(k) : 0;
    let lossE = k * lessonTo - (from < 0 ? 0 : k * (from - i * lessonCount));
    shift(i, to, k);
    if (from >= 0) shift(i, from, -k);
    let pushed = -1;
    let landed = undone;
    let j = 0;
    let back = 0;
    if (!minutesFit(lessonTo)) {
      // push a neighbour out of the way
      const b = int(inLesson, lessonTo * activityCount + drawIndex(int(lessonSize, lessonTo)));
      j = int(listedActivity, b);
      back = 1 + drawIndex(k + 1);
      const cell = int(cells, b);
      landed = j === i || int(minutes, cell) - back < int(minChunkOf, j) ? nowhere : goalOf(j, b, back);
      if (landed !== nowhere) {
        pushed = cell;
        shift(j, pushed, -back);
        lossE -= back * lessonTo;
        if (landed >= 0) {
          shift(j, landed, back);
          lossE += back * (landed - j * lessonCount);
        } else lossU += real(weightOf, j) * f64(back);
      }
    }
    const allowed =
      landed !== nowhere &&
      minutesFit(lessonTo) &&
      (from < 0 || minutesFit(from - i * lessonCount)) &&
      (landed < 0 || minutesFit(landed - j * lessonCount));
    if (allowed && isKept(lossU, f64(lossE), heatU, heatE)) {
      setReal(score, 0, real(score, 0) + lossU);
      setReal(score, 2, real(score, 2) + f64(lossE));
      continue;
    }
    if (landed >= 0) shift(j, landed, -back);
    if (pushed >= 0) shift(j, pushed, back);
    if (from >= 0) shift(i, from, k);
    shift(i, to, -k);
  }
}

/** Where the minutes come from: another chunk of the activity, or minutes left undone, or nowhere. */
function sourceOf(i: i32, a: i32, k: i32): i32 {
  const pieces = int(chunks, i);
  const placed = int(sum, i);
  if (placed < int(demandOf, i) && (pieces === 1 || draw() < 0.5))
    return placed + k <= int(maxPartialOf, i) ? undone : nowhere;
  if (pieces < 2) return nowhere;
  const cell = otherCell(i, a, pieces);
  return int(minutes, cell) - k >= int(minChunkOf, i) ? cell : nowhere;
}

/** Where pushed minutes go: another chunk of the activity, or left undone, or nowhere. */
function goalOf(j: i32, b: i32, back: i32): i32 {
  const pieces = int(chunks, j);
  if (int(sum, j) < int(demandOf, j) && (pieces === 1 || draw() < 0.5)) return undone;
  if (pieces < 2) return nowhere;
  const cell = otherCell(j, b, pieces);
  return int(minutes, cell) + back <= int(maxChunkOf, j) ? cell : nowhere;
}

function otherCell(i: i32, a: i32, pieces: i32): i32 {
  const other = int(listStart, i) + drawIndex(pieces - 1);
  return int(cells, other >= a ? other + 1 : other);
}

function shift(i: i32, cell: i32, by: i32): void {
  const l = cell - i * lessonCount;
  const before = int(minutes, cell);
  addInt(minutes, cell, by);
  addInt(total, l, by);
  addInt(squares, l, by * (2 * before + by));
  addInt(sum, i, by);
}

function isKept(lossU: f64, lossE: f64, heatU: f64, heatE: f64): bool {
  if (lossU < -1e-9) return true;
  if (lossU > 1e-9) return heatU > 0 && draw() < Math.exp(-lossU / heatU);
  return lossE <= 0 || (heatE > 0 && draw() < Math.exp(-lossE / heatE));
}
