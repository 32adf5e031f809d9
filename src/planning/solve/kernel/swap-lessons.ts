// Two lessons exchange all their work.

import { listChunks } from './chunk-list.ts';
import { isChangeWorth, isInOrder, lift, setChanges, settle } from './make-move.ts';
import { int } from './memory.ts';
import { activityCount, firstOf, gapWeight, lastOf, lateWeight, lessonCount, soloWeight } from './model.ts';
import { draw, drawInteger } from './random.ts';
import {
  activityOf,
  gapsOf,
  journal,
  journalLength,
  lessonFits,
  minutes,
  refreshActivity,
  setMinutes,
  startStep,
  strandsIn,
  undoStep,
} from './state.ts';

/** Makes such an exchange if it is allowed and worth it; false when not, with everything as it was. */
export function swapLessons(level: i32): bool {
  if (lessonCount < 2) return false;
  const a = drawInteger(0, lessonCount - 1);
  const b = draw() < 0.5 ? a + 1 : drawInteger(0, lessonCount - 1);
  if (a === b || b >= lessonCount) return false;
  for (let i = 0; i < activityCount; i++) {
    if (int(minutes, i * lessonCount + a) > 0 && (b < int(firstOf, i) || b > int(lastOf, i))) return false;
    if (int(minutes, i * lessonCount + b) > 0 && (a < int(firstOf, i) || a > int(lastOf, i))) return false;
  }
  startStep();
  const withReviews = level > 0;
  const soloBefore = soloOf(a) + soloOf(b);
  let late: f64 = 0;
  let early: f64 = 0;
  for (let i = 0; i < activityCount; i++) {
    const inA = int(minutes, i * lessonCount + a);
    const inB = int(minutes, i * lessonCount + b);
    if (inA === inB) continue;
    if (withReviews) late -= lift(i);
    early += f64((inA - inB) * (b - a)) - gapWeight * f64(gapsOf(i));
    setMinutes(i, a, inB);
    setMinutes(i, b, inA);
    refreshActivity(i);
    early += gapWeight * f64(gapsOf(i));
  }
  if (journalLength === 0 || !lessonFits(a) || !lessonFits(b) || !isAllInOrder()) {
    undoStep();
    return false;
  }
  if (withReviews) late += settleAll();
  setChanges(lateWeight * late + soloWeight * f64(soloOf(a) + soloOf(b) - soloBefore), early);
  if (!isChangeWorth(level)) {
    undoStep();
    return false;
  }
  listChunks();
  return true;
}

function isAllInOrder(): bool {
  for (let k = journalLength - 2; k >= 0; k -= 2) {
    const cell = int(journal, k);
    if (cell >= 0 && !isInOrder(int(activityOf, cell))) return false;
  }
  return true;
}

/** Puts the revisits of all that moved where they go now; how late they are, weighted. */
function settleAll(): f64 {
  const length = journalLength;
  let late: f64 = 0;
  let before = -1;
  for (let k = 0; k < length; k += 2) {
    const cell = int(journal, k);
    if (cell < 0 || int(activityOf, cell) === before) continue;
    before = int(activityOf, cell);
    late += settle(before);
  }
  return late;
}

function soloOf(l: i32): i32 {
  return int(strandsIn, l) === 1 ? 1 : 0;
}
