// mulberry32 (public domain, by Tommy Ettinger), as in core: the same seed gives the same sequence.

let state: i32 = 0;

export function seedRandom(seed: i32): void {
  state = seed;
}

/** A number in [0, 1). */
export function draw(): f64 {
  state += 0x6d2b79f5;
  let mixed: i32 = (state ^ (state >>> 15)) * (state | 1);
  mixed ^= mixed + (mixed ^ (mixed >>> 7)) * (mixed | 61);
  return f64(u32(mixed ^ (mixed >>> 14))) / 4294967296.0;
}

/** A whole number from `low` to `high`, both included. */
export function drawInteger(low: i32, high: i32): i32 {
  return low + i32(Math.floor(draw() * f64(high - low + 1)));
}

/** A whole number from 0 up to, not including, `count`. */
export function drawIndex(count: i32): i32 {
  return i32(draw() * f64(count));
}

/** The n-th of `count` from `start` on, and round. */
export function around(start: i32, n: i32, count: i32): i32 {
  const at = start + n;
  return at < count ? at : at - count;
}
