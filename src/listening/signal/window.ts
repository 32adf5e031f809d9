// Windows that fade a frame in and out, so that its spectrum shows partials and not the frame's own edges.

/** The periodic Hann window of `length` samples (Harris 1978, eq. 27a): 0 at its start, 1 in its middle. */
export function createHannWindow(length: number): Float64Array {
  return Float64Array.from({ length }, (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / length));
}

/** The modified Bessel function of the first kind and order 0 (power series), which shapes the Kaiser window. */
export function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-12; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
