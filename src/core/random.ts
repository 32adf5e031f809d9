// Chance as an argument: pure code draws from a Random it is handed; the server and the screens make the real one, tests a seeded one.

import { assert } from './assert.ts';

export interface Random {
  /** A number in [0, 1). */
  next(): number;
}

/**
 * A seeded generator (mulberry32, public domain, by Tommy Ettinger): the same seed gives the same sequence on every
 * machine. `seed` is any 32-bit integer.
 */
export function createSeededRandom(seed: number): Random {
  let state = seed | 0; // kept as a small integer: an unsigned one would be allocated at every draw
  return {
    next() {
      state = (state + 0x6d2b79f5) | 0;
      let mixed = Math.imul(state ^ (state >>> 15), state | 1);
      mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
      return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    },
  };
}

/** A whole number from `low` to `high`, both included. */
export function randomInteger(random: Random, low: number, high: number): number {
  return low + Math.floor(random.next() * (high - low + 1));
}

/** One of some things, all equally likely; there is at least one. Draws once. */
export function chooseOne<T>(random: Random, items: readonly T[]): T {
  assert(items.length > 0, 'something to choose from');
  return items[randomInteger(random, 0, items.length - 1)] as T; // in range by the line above
}

/** A normal deviate, of mean 0 and variance 1 (Box and Muller 1958). Draws twice. */
export function randomNormal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}
