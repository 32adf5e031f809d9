// Puts one activity back into the lessons in the best way there is with everything else as it stands: an exact dynamic
// programme over lessons × minutes placed so far (× lessons in a row, where the run limit can bite).

import { type Inserter, leastOf, pWeight } from './inserter.ts';
import type { Model } from './model.ts';
import { plainProgramme, readPlain } from './plain-programme.ts';
import { isRunAllowed, readRun, runProgramme } from './run-programme.ts';
import { never, refreshActivity, type State, setMinutes } from './state.ts';

/**
 * Inserts an activity that stands nowhere. False when that breaks the plan: successors are placed and it cannot be
 * complete in time for them. Placing nothing is fine otherwise.
 */
export function insertActivity(
  model: Model,
  state: State,
  inserter: Inserter,
  i: number,
  carry: boolean,
): boolean {
  let from = model.first[i] ?? 0;
  let until = model.last[i] ?? -1;
  let needed = false;
  for (const p of model.preds[i] ?? []) {
    const done = state.doneAt[p] ?? never;
    if (done > from) from = done;
  }
  for (const j of model.succs[i] ?? []) {
    const start = state.firstAt[j] ?? never;
    if (start === never) continue;
    needed = true;
    if (start < until) until = start;
  }
  const demand = model.demand[i] ?? 0;
  inserter.work += 60;
  if (demand === 0) return true;
  if (from > until) return !needed;
  const wantsAll = needed || (model.weight[i] ?? 0) > 0 || (carry && model.carries[i] === 1);
  inserter.preparedTo = from - 1;
  inserter.fitting = 0;
  // without the run limit first: what it allows anyway is the best with it too
  plainProgramme(model, state, inserter, i, from, until, wantsAll);
  let wanted = chooseMinutes(model, inserter, i, needed, carry, false);
  if (wanted < 0) return false;
  if (wanted === 0) return true;
  readPlain(model, inserter, i, from, wanted);
  if ((model.runStart[i] ?? -1) >= 0 && !isRunAllowed(model, inserter.row, 0, i, from, inserter.stop)) {
    runProgramme(model, state, inserter, i, from, until, wantsAll);
    wanted = chooseMinutes(model, inserter, i, needed, carry, true);
    if (wanted < 0) return false;
    if (wanted === 0) return true;
    readRun(model, inserter, i, from, wanted);
  }
  const { row, stop } = inserter;
  for (let l = from; l <= stop; l++) {
    const m = row[l] ?? 0;
    if (m > 0) setMinutes(model, state, i, l, m);
  }
  refreshActivity(model, state, i);
  return true;
}

/** How many minutes to place: as many as possible of core work that counts, else what costs least. −1: cannot be. */
function chooseMinutes(
  model: Model,
  inserter: Inserter,
  i: number,
  needed: boolean,
  carry: boolean,
  withRun: boolean,
): number {
  const { cost } = inserter;
  const states = withRun ? model.maxRun + model.parkGap : 1;
  const demand = model.demand[i] ?? 0;
  const complete = leastOf(cost, demand, states);
  if (complete < Number.POSITIVE_INFINITY && (needed || (carry && model.carries[i] === 1))) return demand;
  if (needed) return -1;
  const maxPartial = model.maxPartial[i] ?? 0;
  if ((model.weight[i] ?? 0) > 0) {
    if (complete < Number.POSITIVE_INFINITY) return demand;
    for (let s = maxPartial; s > 0; s--) if (leastOf(cost, s, states) < Number.POSITIVE_INFINITY) return s;
    return 0;
  }
  const split = model.splitWeight * inserter.splitFactor * pWeight;
  const value = (model.value[i] ?? 0) * pWeight;
  let best = 0;
  let least = value;
  if (complete - split < least) {
    least = complete - split;
    best = demand;
  }
  for (let s = 1; s <= maxPartial; s++) {
    const price = leastOf(cost, s, states) - split + value;
    if (price >= least) continue;
    least = price;
    best = s;
  }
  return best;
}
