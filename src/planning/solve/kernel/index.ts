// The way in: the outside writes a problem into memory, has it searched, and reads the plan. `pack-model.ts` and
// `run-kernel.ts` outside are the other side of this.

import { clearMemory, newInts, newReals } from './memory.ts';
import { readModel } from './model.ts';
import { seedRandom } from './random.ts';
import { best, bestMinutes, bestReviewAt, search } from './search.ts';
import { rounds } from './walk.ts';

let ints: i32 = 0;
let reals: i32 = 0;

/** Room for a problem of so many numbers: the address of the whole ones. */
export function makeRoom(intCount: i32, realCount: i32): i32 {
  clearMemory();
  ints = newInts(intCount);
  reals = newReals(realCount);
  return ints;
}

export function realsAddress(): i32 {
  return reals;
}

/** Searches the problem that was written; returns the rounds. */
export function solve(steps: i32, seed: i32): i32 {
  readModel(ints, reals);
  seedRandom(seed);
  search(steps);
  return rounds;
}

export function minutesAddress(): i32 {
  return bestMinutes;
}

export function reviewsAddress(): i32 {
  return bestReviewAt;
}

/** U, P, E and what moved: floating-point numbers. */
export function scoreAddress(): i32 {
  return best;
}
