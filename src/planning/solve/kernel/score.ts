// The objective of a state: U, P, E, and what moved against the last plan, in the order in which they count. Beside it stand
// the squared minutes of all lessons: the fewer, the more room is left under the limits.

import { int, newReals, real, setReal } from './memory.ts';
import {
  activityCount,
  demandOf,
  gapWeight,
  hasLast,
  lastMinutes,
  lastReviewAt,
  lateWeight,
  lessonCount,
  reviewCount,
  soloWeight,
  splitWeight,
  weightOf,
  worthOf,
} from './model.ts';
import {
  chunks,
  gapsOf,
  latenessOf,
  minutes,
  opening,
  reviewAt,
  squares,
  strandsIn,
  sum,
  total,
} from './state.ts';

/** U, P, E, moves, and the squared minutes, which do not count in a comparison. */
export const scoreSize: i32 = 5;

export function newScore(): i32 {
  return newReals(scoreSize);
}

/** Writes the score of the state into `into`. */
export function measureScore(into: i32): void {
  let undone: f64 = 0;
  let penalty: f64 = 0;
  let splits = 0;
  let gaps = 0;
  for (let i = 0; i < activityCount; i++) {
    const left = int(demandOf, i) - int(sum, i);
    const pieces = int(chunks, i);
    if (left > 0) {
      undone += real(weightOf, i) * f64(left);
      penalty += real(worthOf, i);
    }
    if (pieces > 1) {
      splits += pieces - 1;
      gaps += gapsOf(i);
    }
  }
  let late: f64 = 0;
  if (lateWeight > 0) for (let r = 0; r < reviewCount; r++) late += latenessOf(r);
  let solo = 0;
  let early = 0;
  let squared = 0;
  for (let l = 0; l < lessonCount; l++) {
    if (int(strandsIn, l) === 1) solo++;
    squared += int(squares, l);
    early += l * (int(total, l) - int(opening, l));
  }
  setReal(into, 0, undone);
  setReal(into, 1, penalty + lateWeight * late + soloWeight * f64(solo) + splitWeight * f64(splits));
  setReal(into, 2, f64(early) + gapWeight * f64(gaps));
  setReal(into, 3, hasLast ? f64(movesSince()) : 0);
  setReal(into, 4, f64(squared));
}

function movesSince(): i32 {
  let moves = 0;
  for (let cell = 0; cell < activityCount * lessonCount; cell++)
    moves += abs(int(minutes, cell) - int(lastMinutes, cell));
  for (let r = 0; r < reviewCount; r++) if (int(reviewAt, r) !== int(lastReviewAt, r)) moves++;
  return moves;
}

/** The first place in which two scores differ by more than rounding; 4 when they are equal. */
export function firstDifference(a: i32, b: i32): i32 {
  for (let k = 0; k < 4; k++) if (abs(real(a, k) - real(b, k)) > 1e-7) return k;
  return 4;
}

/** Whether two scores are equal in all numbers. */
export function isAlike(a: i32, b: i32): bool {
  return firstDifference(a, b) === 4 && real(a, 4) === real(b, 4);
}

/** Whether the score a is better than b: smaller in the first place in which they differ. */
export function isBetter(a: i32, b: i32): bool {
  const at = firstDifference(a, b);
  return at < 4 && real(a, at) < real(b, at);
}
