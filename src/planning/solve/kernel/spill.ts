// Work may come into a lesson with a few minutes too many there, if minutes of other work can make way: they go to another
// lesson that their activity is in anyway, push others on there, and so on until there is room. So lessons that must be full
// to the minute are found without splitting anything anew. The shortest way for one minute after the other.

import { addWork } from './clock.ts';
import { fillInts, int, newInts, setInt } from './memory.ts';
import { activityCount, capacity, lessonCount, maxChunkOf, minChunkOf, squareLimit } from './model.ts';
import { around, drawIndex } from './random.ts';
import { chunks, endAt, firstAt, minutes, minutesFit, setMinutes, squares, total } from './state.ts';

let queue: i32 = 0;
/** The lesson before on the way, `unseen` where it has not been, and the activity whose minute comes from there. */
let cameFrom: i32 = 0;
let comingOf: i32 = 0;
const unseen: i32 = -1;
/** Work of each lesson looked at. */
const lookWork: i32 = 260;

export function createSpill(): void {
  queue = newInts(lessonCount);
  cameFrom = newInts(lessonCount);
  comingOf = newInts(lessonCount);
}

/** Sends minutes on until the lesson holds what it has; false when there is no way. Other lessons always stay in order. */
export function relieve(l: i32): bool {
  while (!minutesFit(l)) if (!sendMinute(l)) return false;
  return true;
}

/** Breadth first from the lesson that is too full to the nearest one with room. */
function sendMinute(start: i32): bool {
  fillInts(cameFrom, lessonCount, unseen);
  setInt(cameFrom, start, start);
  setInt(queue, 0, start);
  const shift = drawIndex(activityCount);
  let size = 1;
  for (let head = 0; head < size; head++) {
    const l = int(queue, head);
    addWork(lookWork);
    for (let n = 0; n < activityCount; n++) {
      const i = around(shift, n, activityCount);
      const here = int(minutes, i * lessonCount + l);
      if (here <= int(minChunkOf, i) || int(chunks, i) < 2 || !mayLeave(l, start, i, here)) continue;
      const until = int(endAt, i);
      for (let to = int(firstAt, i); to <= until; to++) {
        const there = int(minutes, i * lessonCount + to);
        if (there === 0 || there >= int(maxChunkOf, i) || int(cameFrom, to) !== unseen) continue;
        setInt(cameFrom, to, l);
        setInt(comingOf, to, i);
        const sum = int(total, to) + 1;
        if (sum <= int(capacity, to) && int(squares, to) + 2 * there + 1 <= squareLimit(to, sum)) {
          shiftAlong(start, to);
          return true;
        }
        setInt(queue, size++, to);
      }
    }
  }
  return false;
}

/** Whether a lesson on the way may give a minute of i for the one that comes: its total stays, its squares change. */
function mayLeave(l: i32, start: i32, i: i32, here: i32): bool {
  if (l === start) return true;
  const coming = int(comingOf, l);
  if (coming === i) return true;
  const had = int(minutes, coming * lessonCount + l);
  return int(squares, l) + 2 * (had - here) + 2 <= squareLimit(l, int(total, l));
}

function shiftAlong(start: i32, goal: i32): void {
  for (let to = goal; to !== start; ) {
    const from = int(cameFrom, to);
    const i = int(comingOf, to);
    setMinutes(i, to, int(minutes, i * lessonCount + to) + 1);
    setMinutes(i, from, int(minutes, i * lessonCount + from) - 1);
    to = from;
  }
}
