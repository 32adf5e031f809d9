import { int } from './memory.ts';
import { capacity, lessonCount, recap, reviewMax, reviewMinutes, squareLimit } from './model.ts';
import { dueOf, opening, setReview, squares, total } from './state.ts';

/** Whether a revisit of so many minutes fits into the lesson as it is. */
export function reviewFits(l: i32, length: i32): bool {
  const before = int(opening, l);
  const after = before + length;
  if (after - int(recap, l) > int(reviewMax, l)) return false;
  const sum = int(total, l) + length;
  if (sum > int(capacity, l)) return false;
  return int(squares, l) + after * after - before * before <= squareLimit(l, sum);
}

/** Puts an unplaced revisit into the first lesson from its due one where it fits, if any. */
export function insertReview(r: i32): void {
  const length = int(reviewMinutes, r);
  for (let l = dueOf(r); l < lessonCount; l++) {
    if (!reviewFits(l, length)) continue;
    setReview(r, l);
    return;
  }
}
