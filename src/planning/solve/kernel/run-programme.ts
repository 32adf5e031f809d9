// The dynamic programme where the run limit bites: over lessons × minutes × lessons in a row.

import {
  addWork,
  cap,
  choiceAt,
  cost,
  lateCost,
  leastOf,
  leastPrice,
  leastToCome,
  minuteCost,
  nextCost,
  prepareLesson,
  priceMinutes,
  row,
  setChoice,
  setStop,
  stop,
  swapCosts,
} from './inserter.ts';
import { int, real, setInt, setReal } from './memory.ts';
import { demandOf, maxPartialOf, maxRun, minChunkOf, parkGap, runStart } from './model.ts';

/** The same with the state of the run: 0 … maxRun − 1 lessons in a row, then parkGap … 1 lessons of rest. */
export function runProgramme(i: i32, from: i32, until: i32, wantsAll: bool): void {
  const demand = int(demandOf, i);
  const minChunk = int(minChunkOf, i);
  const maxPartial = int(maxPartialOf, i);
  const states = maxRun + parkGap;
  const width = (demand + 1) * states;
  for (let k = 0; k < width; k++) setReal(cost, k, Infinity);
  setReal(cost, from === 0 ? int(runStart, i) : 0, 0);
  let reach = 0;
  setStop(until);
  for (let l = from; l <= until; l++) {
    prepareLesson(i, l);
    const most = int(cap, l);
    const start = l * width;
    for (let k = 0; k < width; k++) setReal(nextCost, k, Infinity);
    if (most > 0) priceMinutes(i, l, most);
    const late = real(lateCost, l);
    for (let s = 0; s <= demand; s = s === reach ? demand : s + 1) {
      const high = min(most, demand - s);
      for (let run = 0; run < states; run++) {
        const here = real(cost, s * states + run);
        if (here === Infinity) continue;
        const idle = s * states + (run > maxRun ? run - 1 : 0);
        if (here < real(nextCost, idle)) {
          setReal(nextCost, idle, here);
          setChoice(start + idle, -run);
        }
        if (run >= maxRun) continue;
        const nextRun = run + 1 < maxRun ? run + 1 : states - 1;
        for (let m = minChunk; m <= high; m++) {
          const placed = s + m;
          if (placed > maxPartial && placed < demand) continue;
          const there = here + real(minuteCost, m) + (placed === demand ? late : 0);
          const k = placed * states + nextRun;
          if (there >= real(nextCost, k)) continue;
          setReal(nextCost, k, there);
          setChoice(start + k, m);
        }
        addWork(high >= minChunk ? high - minChunk + 4 : 3);
      }
      if (s === demand) break;
    }
    swapCosts();
    addWork(width >> 2);
    reach = max(reach, min(maxPartial, reach + most));
    if (wantsAll && isSettled(i, l, reach)) {
      setStop(l);
      break;
    }
  }
}

/** As in the plain programme, over the states of the run. */
function isSettled(i: i32, l: i32, reach: i32): bool {
  const states = maxRun + parkGap;
  const demand = int(demandOf, i);
  const complete = leastOf(demand, states);
  if (complete === Infinity) return false;
  const price = real(leastPrice, l + 1);
  const room = complete - leastToCome(i);
  for (let s = 0; s <= reach; s++)
    for (let run = 0; run < states; run++)
      if (real(cost, s * states + run) + price * f64(demand - s) < room) return false;
  return true;
}

/** Reads the way to `wanted` minutes off the programme into `row`. */
export function readRun(i: i32, from: i32, wanted: i32): void {
  const states = maxRun + parkGap;
  const width = (int(demandOf, i) + 1) * states;
  let s = wanted;
  let run = 0;
  for (let k = 1; k < states; k++) if (real(cost, s * states + k) < real(cost, s * states + run)) run = k;
  for (let l = stop; l >= from; l--) {
    const m = choiceAt(l * width + s * states + run);
    setInt(row, l, max(0, m));
    if (m > 0) {
      s -= m;
      run = run === states - 1 ? maxRun - 1 : run - 1;
    } else run = -m;
  }
}

/** Whether the lessons of `minutesRow` keep the run limit, counted from the run before lesson 0. */
export function isRunAllowed(minutesRow: i32, i: i32, from: i32, until: i32): bool {
  let run = from === 0 ? int(runStart, i) : 0;
  let rest = 0;
  for (let l = from; l <= until; l++) {
    if (int(minutesRow, l) === 0) {
      run = 0;
      rest--;
      continue;
    }
    if (rest > 0) return false;
    run++;
    if (run === maxRun) {
      rest = parkGap;
      run = 0;
    }
  }
  return true;
}
