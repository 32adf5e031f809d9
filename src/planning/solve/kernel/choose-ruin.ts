// Chooses what to take out of the plan in one step: work that competes for the same lessons, so that putting it back
// can come out differently. After the ruin-and-recreate of G. Schrimpf et al., Journal of Computational Physics 159
// (2000) 139-171, and the strings of neighbours of J. Christiaens and G. Vanden Berghe, Transportation Science 54 (2020).

import { pickLate } from './bring-forward.ts';
import { pickEven } from './even-out.ts';
import { pickCrowdedOut } from './make-room.ts';
import { int, setInt } from './memory.ts';
import {
  activityCount,
  demandOf,
  firstOf,
  lastOf,
  lessonCount,
  predStart,
  preds,
  strandCount,
  strandOf,
  succStart,
  succs,
} from './model.ts';
import { around, draw, drawInteger } from './random.ts';
import {
  clearRuin,
  isPicked,
  pick,
  picked,
  pickedCount,
  pickFromPool,
  pool,
  ruinFrom,
  ruinUntil,
  setRuinLessons,
} from './ruin.ts';
import { doneAt, firstAt, minutes, never, standsIn, sum } from './state.ts';
import {
  aroundUpTo,
  evenShare,
  makeRoomShare,
  neighboursShare,
  soonShare,
  strandShare,
  unfinishedAtU,
  unfinishedLater,
} from './tuning.ts';

/** Picks activities to take out, at most about `most` placed ones and a few unfinished ones. */
export function chooseRuin(most: i32, level: i32): void {
  clearRuin();
  if (level === 0 && draw() < makeRoomShare && pickCrowdedOut()) {
    pickUnfinished(1);
    return;
  }
  if (draw() < evenShare(level) && pickEven()) {
    if (draw() < 0.5) pickUnfinished(1);
    return;
  }
  if (draw() < soonShare(level) && pickLate()) {
    if (draw() < 0.5) pickUnfinished(1);
    return;
  }
  const way = draw();
  const byStrand = strandCount > 1 && draw() < strandShare(level);
  if (byStrand) pickStrands();
  else if (way < neighboursShare) pickNeighbours(drawInteger(0, lessonCount - 1), most);
  else if (way < aroundUpTo) pickAround(most);
  else pickChain(most);
  pickUnfinished(level === 0 ? unfinishedAtU : drawInteger(0, unfinishedLater));
}

/** Activities that stand in a lesson or the few after it. */
function pickNeighbours(lesson: i32, most: i32): void {
  const span = draw() < 0.4 ? 1 : drawInteger(2, 4);
  const from = max(0, lesson - (draw() < 0.5 ? span - 1 : 0));
  const until = min(lessonCount - 1, from + span - 1);
  setRuinLessons(from, until);
  let size = 0;
  for (let i = 0; i < activityCount; i++) {
    if (standsIn(i, from, until)) setInt(pool, size++, i);
  }
  pickFromPool(size, drawInteger(1, most));
}

/** One activity, and some of what stands in a lesson that it could be in. */
function pickAround(most: i32): void {
  const i = drawInteger(0, activityCount - 1);
  const from = int(firstOf, i);
  const until = int(lastOf, i);
  if (from > until) return;
  pickNeighbours(drawInteger(from, until), max(1, most - 1));
  pick(i);
}

/** An activity with what it rests on and what rests on it. */
function pickChain(most: i32): void {
  const i = drawInteger(0, activityCount - 1);
  pick(i);
  for (let k = 0; k < pickedCount && pickedCount < most; k++) {
    const here = int(picked, k);
    for (let n = int(succStart, here); n < int(succStart, here + 1); n++)
      if (pickedCount < most && draw() < 0.7) pick(int(succs, n));
    for (let n = int(predStart, here); n < int(predStart, here + 1); n++)
      if (pickedCount < most && draw() < 0.5) pick(int(preds, n));
  }
  const at = int(firstAt, i);
  const from = int(firstOf, i);
  const until = int(lastOf, i);
  const lesson = at !== never ? at : from <= until ? drawInteger(from, until) : 0;
  setRuinLessons(lesson, lessonCount - 1);
  // what does not stand yet needs room made for it
  if (at === never || draw() < 0.5) pickNeighbours(lesson, at === never ? most : 2);
  if (at === never) setRuinLessons(ruinFrom, lessonCount - 1);
}

/** All work of one strand in a lesson, and of one in another lesson: two lessons can exchange what they are about. */
function pickStrands(): void {
  const last = lessonCount - 1;
  const a = drawInteger(0, last);
  const b = min(last, draw() < 0.58 ? a + 1 : drawInteger(0, last));
  pickStrand(a);
  if (b !== a) pickStrand(b);
  setRuinLessons(min(a, b), max(a, b));
}

function pickStrand(lesson: i32): void {
  let seen = 0;
  let strand = -1;
  for (let i = 0; i < activityCount; i++) {
    if (int(minutes, i * lessonCount + lesson) === 0) continue;
    seen++;
    if (draw() * f64(seen) < 1) strand = int(strandOf, i);
  }
  for (let i = 0; i < activityCount; i++)
    if (int(strandOf, i) === strand && int(minutes, i * lessonCount + lesson) > 0) pick(i);
}

/** Up to so many activities that are not finished and could stand in these lessons, with what they wait for. */
function pickUnfinished(most: i32): void {
  const start = drawInteger(0, activityCount - 1);
  let wanted = most;
  for (let k = 0; k < activityCount && wanted > 0; k++) {
    const i = around(start, k, activityCount);
    if (int(sum, i) >= int(demandOf, i) || int(isPicked, i) === 1) continue;
    if (int(lastOf, i) < ruinFrom || int(firstOf, i) > ruinUntil) continue;
    if (waitsFor(i) && draw() < 0.82) continue;
    pickWithUnfinished(i, 6);
    wanted--;
  }
}

/** Whether something it rests on is neither complete nor picked. */
function waitsFor(i: i32): bool {
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const p = int(preds, k);
    if (int(doneAt, p) === never && int(isPicked, p) !== 1) return true;
  }
  return false;
}

function pickWithUnfinished(i: i32, depth: i32): void {
  if (int(isPicked, i) === 1) return;
  pick(i);
  if (depth === 0) return;
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const p = int(preds, k);
    if (int(doneAt, p) === never) pickWithUnfinished(p, depth - 1);
  }
}
