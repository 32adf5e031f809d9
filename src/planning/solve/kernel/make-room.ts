// Work that other work has crowded out of its lessons: it goes back in first, with all it waits for.

import { int, real, setInt } from './memory.ts';
import {
  activityCount,
  demandOf,
  firstOf,
  lastOf,
  predStart,
  preds,
  succStart,
  succs,
  weightOf,
} from './model.ts';
import { draw, drawInteger } from './random.ts';
import { goesFirst, isPicked, pick, ruinFrom, ruinUntil, setRuinLessons } from './ruin.ts';
import { doneAt, never, standsIn, sum } from './state.ts';
import { roomLessons, wholeRoomShare } from './tuning.ts';

/**
 * Picks an unfinished activity, the dearer its rest the likelier; what it rests on that is not complete in time for it;
 * and what stands in a few lessons where it could be. False when nothing that counts is unfinished.
 */
export function pickCrowdedOut(): bool {
  const i = chooseUnfinished();
  if (i < 0) return false;
  const latest = latestFor(i);
  if (latest < 0) return false;
  const until = drawInteger(min(latest, int(firstOf, i)), latest);
  setRuinLessons(max(0, until + 1 - drawInteger(1, roomLessons)), until);
  pickWithWay(i);
  for (let k = int(succStart, i); k < int(succStart, i + 1); k++) {
    const j = int(succs, k);
    if (int(sum, j) < int(demandOf, j)) pick(j);
  }
  const share = draw() < wholeRoomShare ? 1 : 0.6;
  for (let j = 0; j < activityCount; j++) {
    if (int(isPicked, j) === 0 && standsIn(j, ruinFrom, ruinUntil) && draw() < share) pick(j);
  }
  return true;
}

function chooseUnfinished(): i32 {
  let losses: f64 = 0;
  let chosen = -1;
  for (let i = 0; i < activityCount; i++) {
    const loss = real(weightOf, i) * f64(int(demandOf, i) - int(sum, i));
    if (loss <= 0) continue;
    losses += loss;
    if (draw() * losses < loss) chosen = i;
  }
  return chosen;
}

/** The last lesson in which there must be room: its own, or that of something unfinished it rests on. */
function latestFor(i: i32): i32 {
  let latest = int(lastOf, i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const p = int(preds, k);
    if (int(doneAt, p) === never) latest = min(latest, latestFor(p));
  }
  return latest;
}

function pickWithWay(i: i32): void {
  if (int(goesFirst, i) === 1) return;
  setInt(goesFirst, i, 1);
  pick(i);
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const p = int(preds, k);
    if (int(doneAt, p) >= ruinFrom) pickWithWay(p);
  }
}
