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
import { draw, drawInteger } from './random.ts';
import { pick, pickFromPool, pool, setEven, setRuinLessons } from './ruin.ts';
import { blocks, chunks, minutes, opening, total } from './state.ts';

/** Picks what stands in a lesson, and some of what could; false when the lesson cannot be split that way. */
export function pickEven(): bool {
  const l = drawLesson();
  if (l < 0) return false;
  const most = int(maxBlocks, l);
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
  pickFromPool(candidates, drawInteger(1, 3));
  setRuinLessons(l, l);
  setEven(l, roof);
  return true;
}

/** A lesson that could hold more if its chunks were even; −1: none. */
function drawLesson(): i32 {
  let seen = 0;
  let lesson = -1;
  for (let l = 0; l < lessonCount; l++) {
    if (int(maxBlocks, l) < 2 || int(total, l) >= evenTotal(l, int(maxBlocks, l))) continue;
    seen++;
    if (draw() * f64(seen) < 1) lesson = l;
  }
  return lesson;
}

/** Most minutes of a lesson with so many even chunks. */
function evenTotal(l: i32, count: i32): i32 {
  const start = int(opening, l);
  let total = int(capacity, l);
  for (; total > start; total--) {
    const share = (total - start) / count;
    const rest = (total - start) % count;
    const squared = start * start + (count - rest) * share * share + rest * (share + 1) * (share + 1);
    if (squared <= squareLimit(l, total)) break;
  }
  return total;
}

/** Minutes of each of so many even chunks that fill a lesson, rounded up. */
function evenSize(l: i32, count: i32): i32 {
  return (evenTotal(l, count) - int(opening, l) + count - 1) / count;
}
