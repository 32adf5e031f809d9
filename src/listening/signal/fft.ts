// The discrete Fourier transform of real signals whose length is a power of two, and its inverse. Cooley & Tukey
// 1965; the real transform through a complex one of half the length as in Press et al., Numerical Recipes, §12.3.

import { assert } from '#core';

/** A transform of one length with its tables, made once and used for every frame. Not reentrant: owns its buffers. */
export interface RealFft {
  /** Number of real samples. */
  readonly size: number;
  /**
   * The spectrum of `input` (length `size`) for bins 0 … size/2 into `re` and `im` (length size/2 + 1 each), unscaled:
   * a cosine of amplitude 1 centred on a bin gives size/2 there.
   */
  forward(input: Float64Array, re: Float64Array, im: Float64Array): void;
  /**
   * The even real signal whose spectrum is the real `power` (length size/2 + 1), scaled so that lag 0 is the mean over
   * all `size` bins. This is the autocorrelation of a signal whose power spectrum is given (Wiener–Khinchin).
   */
  autocorrelation(power: Float64Array, output: Float64Array): void;
}

/** Makes a transform for `size` real samples, a power of two of at least 8. */
export function createRealFft(size: number): RealFft {
  assert(size >= 8 && (size & (size - 1)) === 0, 'a transform length is a power of two');
  const half = size >> 1;
  const complex = createComplexFft(half);
  const cosines = new Float64Array(half + 1);
  const sines = new Float64Array(half + 1);
  for (let k = 0; k <= half; k++) {
    cosines[k] = Math.cos((2 * Math.PI * k) / size);
    sines[k] = Math.sin((2 * Math.PI * k) / size);
  }
  const a = new Float64Array(half);
  const b = new Float64Array(half);

  function forward(input: Float64Array, re: Float64Array, im: Float64Array): void {
    for (let n = 0; n < half; n++) {
      a[n] = input[2 * n] ?? 0;
      b[n] = input[2 * n + 1] ?? 0;
    }
    complex(a, b);
    const a0 = a[0] ?? 0;
    const b0 = b[0] ?? 0;
    re[0] = a0 + b0;
    im[0] = 0;
    re[half] = a0 - b0;
    im[half] = 0;
    for (let k = 1; k < half; k++) {
      const ak = a[k] ?? 0;
      const bk = b[k] ?? 0;
      const am = a[half - k] ?? 0;
      const bm = b[half - k] ?? 0;
      const evenRe = 0.5 * (ak + am);
      const evenIm = 0.5 * (bk - bm);
      const oddRe = 0.5 * (bk + bm);
      const oddIm = 0.5 * (am - ak);
      const c = cosines[k] ?? 0;
      const s = sines[k] ?? 0;
      re[k] = evenRe + oddRe * c + oddIm * s;
      im[k] = evenIm + oddIm * c - oddRe * s;
    }
  }

  function autocorrelation(power: Float64Array, output: Float64Array): void {
    // An even real spectrum is its own conjugate: pack even and odd lags, as in `forward` read backwards.
    for (let k = 0; k < half; k++) {
      const low = power[k] ?? 0;
      const high = power[half - k] ?? 0;
      const even = low + high;
      const difference = low - high;
      a[k] = even - difference * (sines[k] ?? 0);
      b[k] = -difference * (cosines[k] ?? 0);
    }
    complex(a, b);
    for (let n = 0; n < half; n++) {
      output[2 * n] = (a[n] ?? 0) / size;
      output[2 * n + 1] = -(b[n] ?? 0) / size;
    }
  }

  return { size, forward, autocorrelation };
}

/** An in-place complex transform (radix 4 with one radix-2 pass where needed, decimation in time). */
function createComplexFft(size: number): (re: Float64Array, im: Float64Array) => void {
  const bits = Math.log2(size);
  const reversed = new Uint32Array(size);
  for (let i = 0; i < size; i++) {
    let mirrored = 0;
    for (let bit = 0; bit < bits; bit++) mirrored |= ((i >> bit) & 1) << (bits - 1 - bit);
    reversed[i] = mirrored;
  }
  const cosines = new Float64Array(size);
  const sines = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    cosines[k] = Math.cos((2 * Math.PI * k) / size);
    sines[k] = Math.sin((2 * Math.PI * k) / size);
  }
  return (re, im) => {
    for (let i = 0; i < size; i++) {
      const j = reversed[i] ?? 0;
      if (j <= i) continue;
      const r = re[i] ?? 0;
      re[i] = re[j] ?? 0;
      re[j] = r;
      const m = im[i] ?? 0;
      im[i] = im[j] ?? 0;
      im[j] = m;
    }
    let span = 1;
    if (bits % 2 === 1) {
      for (let i = 0; i < size; i += 2) {
        const r = re[i + 1] ?? 0;
        const m = im[i + 1] ?? 0;
        re[i + 1] = (re[i] ?? 0) - r;
        im[i + 1] = (im[i] ?? 0) - m;
        re[i] = (re[i] ?? 0) + r;
        im[i] = (im[i] ?? 0) + m;
      }
      span = 2;
    }
    for (; span < size; span <<= 2) butterflies(re, im, size, span, cosines, sines);
  };
}

/** Two radix-2 stages at once: joins four transforms of length `span` into one of length 4 · span. */
function butterflies(
  re: Float64Array,
  im: Float64Array,
  size: number,
  span: number,
  cosines: Float64Array,
  sines: Float64Array,
): void {
  const stride = size / (4 * span);
  for (let k = 0; k < span; k++) {
    const c1 = cosines[k * stride] ?? 0;
    const s1 = sines[k * stride] ?? 0;
    const c2 = cosines[2 * k * stride] ?? 0;
    const s2 = sines[2 * k * stride] ?? 0;
    const c3 = cosines[3 * k * stride] ?? 0;
    const s3 = sines[3 * k * stride] ?? 0;
    for (let i = k; i < size; i += 4 * span) {
      const j = i + span;
      const l = j + span;
      const m = l + span;
      // Bit reversal leaves the residue classes in the order 0, 2, 1, 3.
      const r0 = re[i] ?? 0;
      const i0 = im[i] ?? 0;
      const rj = re[j] ?? 0;
      const ij = im[j] ?? 0;
      const rl = re[l] ?? 0;
      const il = im[l] ?? 0;
      const rm = re[m] ?? 0;
      const imm = im[m] ?? 0;
      const r2 = rj * c2 + ij * s2;
      const i2 = ij * c2 - rj * s2;
      const r1 = rl * c1 + il * s1;
      const i1 = il * c1 - rl * s1;
      const r3 = rm * c3 + imm * s3;
      const i3 = imm * c3 - rm * s3;
      const sumRe = r0 + r2;
      const sumIm = i0 + i2;
      const differenceRe = r0 - r2;
      const differenceIm = i0 - i2;
      const oddRe = r1 + r3;
      const oddIm = i1 + i3;
      const turnRe = i1 - i3;
      const turnIm = r3 - r1;
      re[i] = sumRe + oddRe;
      im[i] = sumIm + oddIm;
      re[j] = differenceRe + turnRe;
      im[j] = differenceIm + turnIm;
      re[l] = sumRe - oddRe;
      im[l] = sumIm - oddIm;
      re[m] = differenceRe - turnRe;
      im[m] = differenceIm - turnIm;
    }
  }
}
