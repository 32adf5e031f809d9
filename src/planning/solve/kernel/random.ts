// mulberry32 (public domain, by Tommy Ettinger), as in core: the same seed gives the same sequence.

let state: i32 = 0;

export function seedRandom(seed: i32): void {
  state = seed;
}

/** 32 random bits. */
function bits(): u32 {
  state += 0x6d2b79f5;
  let mixed: i32 = (state ^ (state >>> 15)) * (state | 1);
  mixed ^= mixed + (mixed ^ (mixed >>> 7)) * (mixed | 61);
  return u32(mixed ^ (mixed >>> 14));
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
