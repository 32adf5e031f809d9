// A chunk goes to another lesson, what stands in its way there goes on to a third, and so on until there is room: the
// ejection chains of F. Glover, Discrete Applied Mathematics 65 (1996) 223-253. Where lessons are full this is what a ruin
// of several would find, at a fraction of its cost. U stays as it is.

import { cells, inLesson, lessonSize, listed, listedActivity, listStart } from './chunk-list.ts';
import { addWork } from './clock.ts';
import { int } from './memory.ts';
import { activityCount, lessonCount, maxChunkOf, minChunkOf, reviewMinutes, reviewOf } from './model.ts';
import {
  addMoving,
  clearMoving,
  earliestOf,
  excess,
  fitsWithout,
  hasRoomFor,
  isMoving,
  latestOf,
  mostMoving,
  movingCount,
  sendTo,
  wouldFit,
} from './moving.ts';
import { around, draw, drawIndex, drawInteger } from './random.ts';
import { chunks, lessonOf, minutes, reviewAt } from './state.ts';
import { joinPartShare, joinShare, laterShare, partShare, shiftShare } from './tuning.ts';

/** What a step of a chain ends with: there is room for everything, or no way on. */
const settled: i32 = -1;
const stuck: i32 = -2;
/** Work of each chunk that makes way. */
const stepWork: i32 = 94;

/** Finds a random chain that leaves every lesson with room; false when there is none that way. It is not made yet. */
export function findChain(level: i32): bool {
  clearMoving();
  const place = drawPlace(level);
  const i = int(listedActivity, place);
  const origin = int(lessonOf, int(cells, place));
  let l = int(chunks, i) > 1 && draw() < joinShare ? join(place, i, origin) : leave(place, i, origin);
  while (l >= 0 && !wouldFit(l)) {
    addWork(stepWork);
    if (movingCount >= mostMoving) return false;
    l = draw() < shiftShare ? pushMinutes(l) : pushChunk(l, origin);
  }
  return l !== stuck;
}

/** A random chunk; at E often the later one of two, since it has more to gain. */
function drawPlace(level: i32): i32 {
  const place = drawIndex(listed);
  if (level < 2 || draw() >= laterShare) return place;
  const other = drawIndex(listed);
  return int(lessonOf, int(cells, other)) > int(lessonOf, int(cells, place)) ? other : place;
}

/** All or some of the minutes join another chunk of the activity; its lesson. */
function join(place: i32, i: i32, origin: i32): i32 {
  const other = int(listStart, i) + drawIndex(int(chunks, i) - 1);
  const cell = int(cells, other >= place ? other + 1 : other);
  const room = int(maxChunkOf, i) - int(minutes, cell);
  let m = int(minutes, i * lessonCount + origin);
  if (m > room || draw() < joinPartShare) {
    const most = min(room, m - int(minChunkOf, i));
    m = 1 + drawIndex(5);
    if (m > most) return stuck;
  }
  addMoving(place, m);
  const l = int(lessonOf, cell);
  sendTo(l);
  return l;
}

/** The chunk, or now and then a part of it, goes where the activity has none; that lesson. */
function leave(place: i32, i: i32, origin: i32): i32 {
  const from = earliestOf(i);
  const until = latestOf(i);
  if (from >= until) return stuck;
  const l = drawInteger(from, until);
  if (int(minutes, i * lessonCount + l) > 0) return stuck;
  let m = int(minutes, i * lessonCount + origin);
  if (draw() < partShare) {
    const least = int(minChunkOf, i);
    if (m >= 2 * least) m = drawInteger(least, m - least);
  }
  addMoving(place, m);
  sendTo(l);
  return l;
}

/** As many minutes as needed leave a lesson for another chunk of their activity; the lesson that is too full then. */
function pushMinutes(l: i32): i32 {
  const size = int(lessonSize, l);
  const start = drawIndex(size);
  for (let n = 0; n < size; n++) {
    const place = int(inLesson, l * activityCount + around(start, n, size));
    const j = int(listedActivity, place);
    if (int(chunks, j) < 2 || isMoving(j)) continue;
    const had = int(minutes, j * lessonCount + l);
    const most = had - int(minChunkOf, j);
    let m = max(1, excess(l));
    while (m <= most && !fitsWithout(l, m, had, 0)) m++;
    if (m > most) continue;
    addMoving(place, m);
    return sendToOther(place, j, m);
  }
  return stuck;
}

/** Sends minutes to another chunk of their activity, one with room for them if there is any. */
function sendToOther(place: i32, j: i32, m: i32): i32 {
  const count = int(chunks, j);
  const start = drawIndex(count);
  let full = stuck;
  for (let n = 0; n < count; n++) {
    const other = int(listStart, j) + around(start, n, count);
    const cell = int(cells, other);
    if (other === place || int(minutes, cell) + m > int(maxChunkOf, j)) continue;
    full = int(lessonOf, cell);
    sendTo(full);
    if (wouldFit(full)) return settled;
  }
  return full;
}

/** A chunk without which a lesson has room goes elsewhere; the lesson that is too full then. */
function pushChunk(l: i32, origin: i32): i32 {
  const size = int(lessonSize, l);
  const start = drawIndex(size);
  for (let n = 0; n < size; n++) {
    const place = int(inLesson, l * activityCount + around(start, n, size));
    const j = int(listedActivity, place);
    if (isMoving(j)) continue;
    const m = int(minutes, j * lessonCount + l);
    const r = int(reviewOf, j);
    if (!fitsWithout(l, m, m, r >= 0 && int(reviewAt, r) === l ? int(reviewMinutes, r) : 0)) continue;
    const from = earliestOf(j);
    const until = latestOf(j);
    if (from >= until) continue;
    addMoving(place, m);
    return sendAnywhere(j, m, from, until, origin);
  }
  return stuck;
}

/** Sends a chunk to where the chain began, or another lesson with room, or else any where its activity has none. */
function sendAnywhere(j: i32, m: i32, from: i32, until: i32, origin: i32): i32 {
  const width = until - from + 1;
  const start = drawIndex(width);
  let full = stuck;
  for (let n = -1; n < width; n++) {
    const l = n < 0 ? origin : from + around(start, n, width);
    if (l < from || l > until || int(minutes, j * lessonCount + l) > 0) continue;
    if (hasRoomFor(l, m)) {
      sendTo(l);
      return settled;
    }
    if (full < 0 || n === 0) full = l;
  }
  if (full >= 0) sendTo(full);
  return full;
}
