// The dynamic programme over lessons × minutes placed so far, without the run limit.

import { addWork } from './clock.ts';
import {
  cap,
  choiceAt,
  cost,
  lateCost,
  leastPrice,
  leastToCome,
  minuteCost,
  prepareLesson,
  priceMinutes,
  row,
  setChoice,
  setStop,
  stop,
} from './inserter.ts';
import { int, real, setInt, setReal } from './memory.ts';
import { demandOf, gapWeight, maxPartialOf, minChunkOf } from './model.ts';

/** Cheapest ways to each number of minutes, into `cost` and the choices; with `wantsAll` only as far as completion needs. */
export function plainProgramme(i: i32, from: i32, until: i32, wantsAll: bool): void {
  const demand = int(demandOf, i);
  const minChunk = int(minChunkOf, i);
  const maxPartial = int(maxPartialOf, i);
  const width = demand + 1;
  for (let s = 1; s <= demand; s++) setReal(cost, s, Infinity);
  setReal(cost, 0, 0);
  let reach = 0;
  setStop(until);
  for (let l = from; l <= until; l++) {
    prepareLesson(i, l);
    const most = int(cap, l);
    if (most === 0) {
      // what was begun waits
      if (gapWeight > 0) for (let s = minChunk; s <= reach; s++) setReal(cost, s, real(cost, s) + gapWeight);
      continue;
    }
    const start = l * width;
    priceMinutes(i, l, most);
    // complete here
    setChoice(start + demand, 0);
    if (reach + most >= demand) {
      const late = real(lateCost, l);
      let best = real(cost, demand);
      let bestMinutes = 0;
      // before it nothing is placed, or a chunk at least
      const high = min(most, demand - minChunk);
      for (let m = max(minChunk, demand - reach); m <= high; m++) {
        const here = real(cost, demand - m) + late + real(minuteCost, m);
        if (here < best) {
          best = here;
          bestMinutes = m;
        }
      }
      if (demand <= most && late + real(minuteCost, demand) < best) {
        best = late + real(minuteCost, demand);
        bestMinutes = demand;
      }
      if (bestMinutes > 0) {
        setReal(cost, demand, best);
        setChoice(start + demand, bestMinutes);
      }
    }
    const top = min(maxPartial, reach + most);
    for (let s = top; s >= minChunk; s--) {
      let least = real(cost, s) + gapWeight;
      let leastMinutes = 0;
      const high = min(most, s - minChunk);
      for (let m = max(s - reach, minChunk); m <= high; m++) {
        const here = real(cost, s - m) + real(minuteCost, m);
        if (here < least) {
          least = here;
          leastMinutes = m;
        }
      }
      if (s <= most && real(minuteCost, s) < least) {
        least = real(minuteCost, s);
        leastMinutes = s;
      }
      setReal(cost, s, least);
      setChoice(start + s, leastMinutes);
    }
    addWork(57 + max(0, top - minChunk + 2) * (most - minChunk + 1));
    if (top > reach) reach = top;
    if (wantsAll && real(cost, demand) < Infinity && isSettled(i, l, reach)) {
      setStop(l);
      return;
    }
  }
}

/**
 * Whether no way that goes on after lesson l can cost less than completing by then: each has at least one more chunk
 * and pays at least the least price to come for what is missing.
 */
function isSettled(i: i32, l: i32, reach: i32): bool {
  const demand = int(demandOf, i);
  const price = real(leastPrice, l + 1);
  const room = real(cost, demand) - leastToCome(i);
  if (price * f64(demand) < room) return false;
  for (let s = int(minChunkOf, i); s <= reach; s++)
    if (real(cost, s) + price * f64(demand - s) < room) return false;
  return true;
}

/** Reads the way to `wanted` minutes off the programme into `row`. */
export function readPlain(i: i32, from: i32, wanted: i32): void {
  const width = int(demandOf, i) + 1;
  let s = wanted;
  for (let l = stop; l >= from; l--) {
    const m = s === 0 || int(cap, l) === 0 ? 0 : choiceAt(l * width + s);
    setInt(row, l, m);
    s -= m;
  }
}
