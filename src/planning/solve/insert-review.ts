import type { Model } from './model.ts';
import { dueOf, type State, setReview } from './state.ts';

/** Whether a revisit of so many minutes fits into the lesson as it is. */
export function reviewFits(model: Model, state: State, l: number, minutes: number): boolean {
  const before = state.opening[l] ?? 0;
  const after = before + minutes;
  if (after - (model.recap[l] ?? 0) > (model.reviewMax[l] ?? 0)) return false;
  const total = (state.total[l] ?? 0) + minutes;
  if (total > (model.capacity[l] ?? 0)) return false;
  const squares = (state.squares[l] ?? 0) + after * after - before * before;
  return squares <= (model.squareLimit[l]?.[total] ?? -1);
}

/** Puts an unplaced revisit into the first lesson from its due one where it fits, if any. */
export function insertReview(model: Model, state: State, r: number): void {
  const { lessonCount } = model;
  const minutes = model.reviewMinutes[r] ?? 0;
  for (let l = dueOf(model, state, r); l < lessonCount; l++) {
    if (!reviewFits(model, state, l, minutes)) continue;
    setReview(model, state, r, l);
    return;
  }
}
