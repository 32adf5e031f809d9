// Chance: the upper half of a linear congruential generator of 64 bits, with the multiplier that D. Knuth gives for MMIX (The
// Art of Computer Programming 2, 3.3.4; from memory). The same seed gives the same sequence. It is this short because the
// search draws millions of numbers.

/** 6364136223846793005, in two halves that a number of JavaScript can hold. */
const multiplier: u64 = (u64(0x5851f42d) << 32) | 0x4c957f2d;
let state: u64 = 0;

export function seedRandom(seed: i32): void {
  state = u64(u32(seed));
  // seeds that are neighbours must not begin alike
  for (let n = 0; n < 4; n++) {
    bits();
    state ^= state >> 29;
  }
}

/** 32 random bits. */
function bits(): u32 {
  state = state * multiplier + 1;
  return u32(state >> 32);
}

/** A number in [0, 1). */
export function draw(): f64 {
  return f64(bits()) * (1 / 4294967296.0);
}

/** A whole number from `low` to `high`, both included; `high` is at least `low`. */
export function drawInteger(low: i32, high: i32): i32 {
  return low + drawIndex(high - low + 1);
}

/** A whole number from 0 up to, not including, `count`, which is at least 1. */
export function drawIndex(count: i32): i32 {
  return i32((u64(bits()) * u64(count)) >> 32);
}

/** The n-th of `count` from `start` on, and round. */
export function around(start: i32, n: i32, count: i32): i32 {
  const at = start + n;
  return at < count ? at : at - count;
}
