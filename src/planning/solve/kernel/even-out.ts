// A lesson holds most minutes when its chunks are even. One is cleared and filled anew with chunks of about the size that
// so many even ones would have.

import { int, setInt } from './memory.ts';
import {
  activityCount,
  capacity,
  firstOf,
  lastOf,
  lessonCount,
  maxBlocks,
  minChunkOf,
  squareLimit,
} from './model.ts';
import { drawInteger } from './random.ts';
import { pick, pool, setEven, setRuinLessons } from './ruin.ts';
import { blocks, chunks, minutes, opening } from './state.ts';

/** Picks what stands in a lesson, and some of what could; false when the lesson cannot be split that way. */
export function pickEven(): bool {
  const l = drawInteger(0, lessonCount - 1);
  const most = int(maxBlocks, l);
  if (most < 2) return false;
  const count = drawInteger(max(2, min(most, int(blocks, l))), most);
  const size = evenSize(l, count);
  if (size < 1) return false;
  const roof = size + drawInteger(0, 2);
  let candidates = 0;
  for (let i = 0; i < activityCount; i++) {
    if (int(chunks, i) === 0) continue;
    if (int(minutes, i * lessonCount + l) > 0) pick(i);
    else if (int(minChunkOf, i) <= roof && l >= int(firstOf, i) && l <= int(lastOf, i))
      setInt(pool, candidates++, i);
  }
  const wanted = min(candidates, drawInteger(1, 3));
  for (let k = 0; k < wanted; k++) {
    const at = drawInteger(k, candidates - 1);
    const i = int(pool, at);
    setInt(pool, at, int(pool, k));
    pick(i);
  }
  setRuinLessons(l, l);
  setEven(l, roof);
  return true;
}

/** Minutes of each of so many even chunks that fill a lesson, rounded up. */
function evenSize(l: i32, count: i32): i32 {
  const start = int(opening, l);
  for (let total = int(capacity, l); total > start; total--) {
    const share = (total - start) / count;
    const rest = (total - start) % count;
    const squared = start * start + (count - rest) * share * share + rest * (share + 1) * (share + 1);
    if (squared <= squareLimit(l, total)) return rest > 0 ? share + 1 : share;
  }
  return 0;
}
