// The dynamic programme where the run limit bites: over lessons × minutes × lessons in a row.

import { addWork } from './clock.ts';
import {
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
import { copyReals, int, newInts, real, setInt, setReal } from './memory.ts';
import {
  demandOf,
  gapWeight,
  lessonCount,
  maxPartialOf,
  maxRun,
  minChunkOf,
  parkGap,
  runStart,
} from './model.ts';

/** Whether any number of minutes can end in each state of the run, in the lesson at hand and in the next. */
let alive: i32 = 0;
let nextAlive: i32 = 0;

export function createRunProgramme(): void {
  alive = newInts(maxRun + parkGap);
  nextAlive = newInts(maxRun + parkGap);
}

/**
 * The same with the state of the run: 0 … maxRun − 1 lessons in a row, then parkGap … 1 lessons of rest. Costs stand state
 * by state: `cost[run * (demand + 1) + minutes]`.
 */
export function runProgramme(i: i32, from: i32, until: i32, wantsAll: bool): void {
  const demand = int(demandOf, i);
  const minChunk = int(minChunkOf, i);
  const maxPartial = int(maxPartialOf, i);
  const states = maxRun + parkGap;
  const stride = demand + 1;
  const width = stride * states;
  for (let k = 0; k < width; k++) {
    setReal(cost, k, Infinity);
    setReal(nextCost, k, Infinity);
  }
  const start = from === 0 ? int(runStart, i) : 0;
  setReal(cost, start * stride, 0);
  for (let run = 0; run < states; run++) setInt(alive, run, run === start ? 1 : 0);
  let reach = 0;
  setStop(until);
  for (let l = from; l <= until; l++) {
    prepareLesson(i, l);
    const most = int(cap, l);
    const row = l * width;
    const top = most === 0 ? reach : max(reach, min(maxPartial, reach + most));
    rest(row, demand, reach);
    if (most > 0) {
      priceMinutes(i, l, most);
      for (let run = 0; run < maxRun; run++) {
        const next = run + 1 < maxRun ? run + 1 : states - 1;
        setInt(nextAlive, next, int(alive, run));
        if (int(alive, run) === 0) continue;
        const fromRun = cost + ((run * stride) << 3);
        const intoRun = nextCost + ((next * stride) << 3);
        const intoRow = row + next * stride;
        for (let s = 0; s < minChunk; s++) setReal(intoRun, s, Infinity);
        for (let s = minChunk; s <= top; s++)
          placeUpTo(fromRun, intoRun, intoRow, s, minChunk, most, reach, 0);
        placeUpTo(fromRun, intoRun, intoRow, demand, minChunk, most, reach, real(lateCost, l));
        addWork(((top - minChunk + 2) * (most - minChunk + 1)) / 2);
      }
    }
    swapCosts();
    const before = alive;
    alive = nextAlive;
    nextAlive = before;
    addWork(128);
    reach = top;
    if (wantsAll && isSettled(i, l, reach)) {
      setStop(l);
      break;
    }
  }
  for (let run = 0; run < states; run++)
    if (int(alive, run) === 0) for (let s = 0; s < stride; s++) setReal(cost, run * stride + s, Infinity);
}

/** A lesson without the activity: what stood in a row ends, what rests has rested once more, what was begun waits. */
function rest(row: i32, demand: i32, reach: i32): void {
  const stride = demand + 1;
  const states = maxRun + parkGap;
  for (let run = 1; run < states; run++) {
    const passes = run >= maxRun && run + 1 < states && int(alive, run + 1) === 1;
    setInt(nextAlive, run, passes ? 1 : 0);
    if (!passes) continue;
    copyReals(nextCost + ((run * stride) << 3), cost + (((run + 1) * stride) << 3), stride);
    if (gapWeight > 0)
      for (let s = 1; s <= reach; s++)
        setReal(nextCost, run * stride + s, real(nextCost, run * stride + s) + gapWeight);
  }
  for (let s = 0; s <= demand; s = s === reach ? demand : s + 1) {
    let least: f64 = Infinity;
    let leastRun = 0;
    for (let run = 0; run <= maxRun; run++) {
      if (int(alive, run) === 0) continue;
      const here = real(cost, run * stride + s);
      if (here < least) {
        least = here;
        leastRun = run;
      }
    }
    setReal(nextCost, s, s > 0 && s < demand ? least + gapWeight : least);
    setChoice(row + s, -leastRun);
    if (s === demand) break;
  }
  setInt(nextAlive, 0, 1);
}

/** The cheapest last chunk that makes s minutes, from a state of the run in one lesson to the next state in the next. */
function placeUpTo(
  fromRun: i32,
  intoRun: i32,
  intoRow: i32,
  s: i32,
  minChunk: i32,
  most: i32,
  reach: i32,
  late: f64,
): void {
  let least: f64 = Infinity;
  let leastMinutes = 0;
  // before it nothing is placed, or a chunk at least
  const high = min(most, s - minChunk);
  for (let m = max(s - reach, minChunk); m <= high; m++) {
    const here = real(fromRun, s - m) + real(minuteCost, m);
    if (here < least) {
      least = here;
      leastMinutes = m;
    }
  }
  if (s <= most && real(fromRun, 0) + real(minuteCost, s) < least) {
    least = real(fromRun, 0) + real(minuteCost, s);
    leastMinutes = s;
  }
  setReal(intoRun, s, least + late);
  setChoice(intoRow + s, leastMinutes);
}

/** As in the plain programme, over the states of the run. */
function isSettled(i: i32, l: i32, reach: i32): bool {
  const states = maxRun + parkGap;
  const demand = int(demandOf, i);
  const complete = leastOf(demand, states, demand + 1);
  if (complete === Infinity) return false;
  const price = real(leastPrice, l + 1);
  const room = complete - leastToCome(i);
  for (let run = 0; run < states; run++) {
    if (int(alive, run) === 0) continue;
    for (let s = 0; s <= reach; s++)
      if (real(cost, run * (demand + 1) + s) + price * f64(demand - s) < room) return false;
  }
  return true;
}

/** Reads the way to `wanted` minutes off the programme into `row`. */
export function readRun(i: i32, from: i32, wanted: i32): void {
  const states = maxRun + parkGap;
  const stride = int(demandOf, i) + 1;
  let s = wanted;
  let run = 0;
  for (let k = 1; k < states; k++) if (real(cost, k * stride + s) < real(cost, run * stride + s)) run = k;
  for (let l = stop; l >= from; l--) {
    // a rest that goes on comes from the one before it
    const goesOn = run >= maxRun && run + 1 < states;
    const m = goesOn ? -run - 1 : choiceAt((l * states + run) * stride + s);
    setInt(row, l, max(0, m));
    if (m > 0) {
      s -= m;
      run = run === states - 1 ? maxRun - 1 : run - 1;
    } else run = -m;
  }
}

/** Whether an activity's lessons in a plan's minutes keep the run limit, where that can bite at all. */
export function keepsRunLimit(planMinutes: i32, i: i32): bool {
  if (int(runStart, i) < 0) return true;
  return isRunAllowed(planMinutes + ((i * lessonCount) << 2), i, 0, lessonCount - 1);
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
