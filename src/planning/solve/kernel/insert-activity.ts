// Puts one activity back into the lessons in the best way there is with everything else as it stands: an exact dynamic
// programme over lessons × minutes placed so far (× lessons in a row, where the run limit can bite).

import { leastOf, pWeight, row, splitFactor, startInsertion, stop } from './inserter.ts';
import { int, real } from './memory.ts';
import {
  carries,
  demandOf,
  firstOf,
  lastOf,
  maxPartialOf,
  maxRun,
  parkGap,
  predStart,
  preds,
  runStart,
  splitWeight,
  succStart,
  succs,
  weightOf,
  worthOf,
} from './model.ts';
import { plainProgramme, readPlain } from './plain-programme.ts';
import { isRunAllowed, readRun, runProgramme } from './run-programme.ts';
import { relieve } from './spill.ts';
import {
  doneAt,
  firstAt,
  firstLesson,
  lessonAfter,
  never,
  refreshActivity,
  removeActivity,
  setMinutes,
} from './state.ts';

/**
 * Inserts an activity that stands nowhere, where it helps with up to `spill` minutes too many in a lesson for which other
 * work makes way. False when that breaks the plan: successors are placed and it cannot be complete in time for them.
 */
export function insertActivity(i: i32, carry: bool, spill: i32): bool {
  const isWhole = insertBest(i, carry, spill);
  if (spill === 0 || isMadeWay(i)) return isWhole;
  removeActivity(i);
  return insertBest(i, carry, 0);
}

function isMadeWay(i: i32): bool {
  for (let l = firstLesson(i); l !== never; l = lessonAfter(i, l)) if (!relieve(l)) return false;
  return true;
}

/** Inserts it in the best way there is. Placing nothing is fine unless successors are placed. */
function insertBest(i: i32, carry: bool, spill: i32): bool {
  let from = int(firstOf, i);
  let until = int(lastOf, i);
  let needed = false;
  for (let k = int(predStart, i); k < int(predStart, i + 1); k++) {
    const done = int(doneAt, int(preds, k));
    if (done > from) from = done;
  }
  for (let k = int(succStart, i); k < int(succStart, i + 1); k++) {
    const start = int(firstAt, int(succs, k));
    if (start === never) continue;
    needed = true;
    if (start < until) until = start;
  }
  if (int(demandOf, i) === 0) return true;
  if (from > until) return !needed;
  const wantsAll = needed || real(weightOf, i) > 0 || (carry && int(carries, i) === 1);
  startInsertion(from, spill);
  // without the run limit first: what it allows anyway is the best with it too
  plainProgramme(i, from, until, wantsAll);
  let wanted = chooseMinutes(i, needed, carry, 1);
  if (wanted < 0) return false;
  if (wanted === 0) return true;
  readPlain(i, from, wanted);
  if (int(runStart, i) >= 0 && !isRunAllowed(row, i, from, stop)) {
    runProgramme(i, from, until, wantsAll);
    wanted = chooseMinutes(i, needed, carry, maxRun + parkGap);
    if (wanted < 0) return false;
    if (wanted === 0) return true;
    readRun(i, from, wanted);
  }
  for (let l = from; l <= stop; l++) {
    const m = int(row, l);
    if (m > 0) setMinutes(i, l, m);
  }
  refreshActivity(i);
  return true;
}

/**
 * How many minutes to place: as many as possible of core work that counts, else what costs least. −1: cannot be.
 * `states` are those of the run in `cost`.
 */
function chooseMinutes(i: i32, needed: bool, carry: bool, states: i32): i32 {
  const demand = int(demandOf, i);
  const complete = leastOf(demand, states, demand + 1);
  if (complete < Infinity && (needed || (carry && int(carries, i) === 1))) return demand;
  if (needed) return -1;
  const maxPartial = int(maxPartialOf, i);
  if (real(weightOf, i) > 0) {
    if (complete < Infinity) return demand;
    for (let s = maxPartial; s > 0; s--) if (leastOf(s, states, demand + 1) < Infinity) return s;
    return 0;
  }
  const split = splitWeight * splitFactor * pWeight;
  const value = real(worthOf, i) * pWeight;
  let best = 0;
  let least = value;
  if (complete - split < least) {
    least = complete - split;
    best = demand;
  }
  for (let s = 1; s <= maxPartial; s++) {
    const price = leastOf(s, states, demand + 1) - split + value;
    if (price >= least) continue;
    least = price;
    best = s;
  }
  return best;
}
