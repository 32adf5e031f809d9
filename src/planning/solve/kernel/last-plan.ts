// The plan before this one, put back as far as the problem of today still allows it.

import { reviewFits } from './insert-review.ts';
import { fillInts, int, newInts, setInt } from './memory.ts';
import {
  activityCount,
  capacity,
  demandOf,
  firstOf,
  lastMinutes,
  lastOf,
  lastReviewAt,
  lessonCount,
  maxBlocks,
  maxChunkOf,
  maxPartialOf,
  maxStrands,
  minChunkOf,
  predStart,
  preds,
  reviewCount,
  reviewMinutes,
  squareLimit,
  strandCount,
  strandOf,
} from './model.ts';
import { keepsRunLimit } from './run-programme.ts';
import {
  blocks,
  doneAt,
  dueOf,
  never,
  refreshActivity,
  setMinutes,
  setReview,
  squares,
  startStep,
  strandBlocks,
  strandsIn,
  total,
} from './state.ts';

let isWaiting: i32 = 0;

export function createLastPlan(): void {
  isWaiting = newInts(activityCount);
}

/** Puts the last plan into an empty state, activity by activity, predecessors first: whole rows or nothing. */
export function loadLastPlan(): void {
  startStep();
  fillInts(isWaiting, activityCount, 1);
  let left = activityCount;
  while (left > 0)
    for (let i = 0; i < activityCount; i++) {
      if (int(isWaiting, i) === 0 || waits(i)) continue;
      setInt(isWaiting, i, 0);
      left--;
      if (!isRowAllowed(i)) continue;
      for (let l = 0; l < lessonCount; l++) {
        const m = int(lastMinutes, i * lessonCount + l);
        if (m > 0) setMinutes(i, l, m);
      }
      refreshActivity(i);
    }
  for (let r = 0; r < reviewCount; r++) {
    const at = int(lastReviewAt, r);
    if (at !== never && at >= dueOf(r) && reviewFits(at, int(reviewMinutes, r))) setReview(r, at);
  }
}

function waits(i: i32): bool {
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++)
    if (int(isWaiting, int(preds, k)) === 1) return true;
  return false;
}

function isRowAllowed(i: i32): bool {
  let from = int(firstOf, i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++)
    from = max(from, int(doneAt, int(preds, k)));
  let placed = 0;
  for (let l = 0; l < lessonCount; l++) {
    const m = int(lastMinutes, i * lessonCount + l);
    if (m === 0) continue;
    if (m < int(minChunkOf, i) || m > int(maxChunkOf, i)) return false;
    if (l < from || l > int(lastOf, i)) return false;
    placed += m;
    const sum = int(total, l) + m;
    if (sum > int(capacity, l) || int(squares, l) + m * m > squareLimit(l, sum)) return false;
    if (int(blocks, l) >= int(maxBlocks, l)) return false;
    const joins = int(strandBlocks, l * strandCount + int(strandOf, i)) > 0;
    if (!joins && int(strandsIn, l) >= int(maxStrands, l)) return false;
  }
  return (placed === int(demandOf, i) || placed <= int(maxPartialOf, i)) && keepsRunLimit(lastMinutes, i);
}
