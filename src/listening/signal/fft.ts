// Power spectra of real signals and autocorrelations of power spectra, by discrete Fourier transforms whose length is a
// power of two. Cooley & Tukey 1965; a real transform through a complex one of half the length, and a cosine transform
// through a real one of half the length, as in Press et al., Numerical Recipes, §12.3.

import { assert } from '#core';
import { type ComplexFft, createComplexFft } from './complex-fft.ts';

/** A transform of one length with its tables, made once and used for every frame. Not reentrant: owns its buffers. */
export interface RealFft {
  /** Number of real samples. */
  readonly size: number;
  /**
   * The power of bins 0 … size/2 into `output` (length size/2 + 1), unscaled: a cosine of amplitude 1 centred on a bin
   * gives (size/2)² there. The frame is the `window.length` samples from index `start` under that window (an even number,
   * at most `size`), with zeros after it; what lies outside the samples is silence.
   */
  power(samples: Float32Array, start: number, window: Float64Array, output: Float64Array): void;
  /**
   * Lags 0 … size/2 of the even real signal whose spectrum is the real `power` (length size/2 + 1), scaled so that lag 0
   * is the mean over all `size` bins. This is the autocorrelation of a signal with that power spectrum (Wiener–Khinchin).
   */
  autocorrelation(power: Float64Array, output: Float64Array): void;
}

/** Makes a transform for `size` real samples, a power of two of at least 16. */
export function createRealFft(size: number): RealFft {
  assert(size >= 16 && (size & (size - 1)) === 0, 'a transform length is a power of two');
  const half = size >> 1;
  const cosines = Float64Array.from({ length: half + 1 }, (_, k) => Math.cos((2 * Math.PI * k) / size));
  const sines = Float64Array.from({ length: half + 1 }, (_, k) => Math.sin((2 * Math.PI * k) / size));
  const whole = createComplexFft(half);
  const folded = createComplexFft(half >> 1);

  function power(samples: Float32Array, start: number, window: Float64Array, output: Float64Array): void {
    const { re, im } = whole;
    fillFrame(whole, samples, start, window);
    const real = re[0] ?? 0;
    const imaginary = im[0] ?? 0;
    output[0] = (real + imaginary) ** 2;
    output[half] = (real - imaginary) ** 2;
    // Bins k and half - k come out of the same two terms.
    for (let k = 1, m = half - 1; k <= m; k++, m--) {
      const ak = re[k] ?? 0;
      const bk = im[k] ?? 0;
      const am = re[m] ?? 0;
      const bm = im[m] ?? 0;
      const c = cosines[k] ?? 0;
      const s = sines[k] ?? 0;
      const evenRe = ak + am;
      const evenIm = bk - bm;
      const oddRe = bk + bm;
      const oddIm = am - ak;
      const turnedRe = oddRe * c + oddIm * s;
      const turnedIm = oddIm * c - oddRe * s;
      const sumRe = evenRe + turnedRe;
      const sumIm = evenIm + turnedIm;
      const differenceRe = evenRe - turnedRe;
      const differenceIm = evenIm - turnedIm;
      output[k] = 0.25 * (sumRe * sumRe + sumIm * sumIm);
      output[m] = 0.25 * (differenceRe * differenceRe + differenceIm * differenceIm);
    }
  }

  function autocorrelation(power: Float64Array, output: Float64Array): void {
    const { re, im, order } = folded;
    const quarter = half >> 1;
    // Even lags are the transform of the fold, and the differences of odd lags its sine part (Numerical Recipes, cosft1).
    const low = power[0] ?? 0;
    const high = power[half] ?? 0;
    let first = 0.5 * (low - high);
    re[0] = 0.5 * (low + high);
    for (let k = 1, m = half - 1; k < m; k++, m--) {
      const here = power[k] ?? 0;
      const there = power[m] ?? 0;
      const difference = here - there;
      const mean = 0.5 * (here + there);
      const slanted = (sines[k] ?? 0) * difference;
      first += (cosines[k] ?? 0) * difference;
      const atK = order[k >> 1] ?? 0;
      const atM = order[m >> 1] ?? 0;
      if ((k & 1) === 0) {
        re[atK] = mean - slanted;
        re[atM] = mean + slanted;
      } else {
        im[atK] = mean - slanted;
        im[atM] = mean + slanted;
      }
    }
    // half is even, so its middle falls on an even place
    re[order[quarter >> 1] ?? 0] = power[quarter] ?? 0;
    folded.run(false);
    const scale = 2 / size;
    const real = re[0] ?? 0;
    const imaginary = im[0] ?? 0;
    output[0] = scale * (real + imaginary);
    output[half] = scale * (real - imaginary);
    let odd = first;
    output[1] = scale * odd;
    // Lags 2k and half - 2k share their terms; the sine parts wait in the odd places until they are summed.
    for (let k = 1, m = quarter - 1; k <= m; k++, m--) {
      const ak = re[k] ?? 0;
      const bk = im[k] ?? 0;
      const am = re[m] ?? 0;
      const bm = im[m] ?? 0;
      const c = cosines[2 * k] ?? 0;
      const s = sines[2 * k] ?? 0;
      const oddRe = bk + bm;
      const oddIm = am - ak;
      const turnedRe = oddRe * c + oddIm * s;
      const turnedIm = oddIm * c - oddRe * s;
      output[2 * k] = 0.5 * scale * (ak + am + turnedRe);
      output[2 * m] = 0.5 * scale * (ak + am - turnedRe);
      output[2 * k + 1] = 0.5 * (bk - bm + turnedIm);
      output[2 * m + 1] = 0.5 * (bm - bk + turnedIm);
    }
    for (let n = 3; n < half; n += 2) {
      odd -= output[n] ?? 0;
      output[n] = scale * odd;
    }
  }

  return { size, power, autocorrelation };
}

/** Loads a windowed frame in the order the transform wants it, and transforms it. */
function fillFrame(fft: ComplexFft, samples: Float32Array, start: number, window: Float64Array): void {
  const { re, im, order } = fft;
  const pairs = window.length >> 1;
  const isInside = start >= 0 && start + window.length <= samples.length;
  // A frame that fills half the transform: the other half's zeros make copies of the first pass.
  const isPaired = fft.startsInPairs && 2 * pairs === re.length;
  for (let n = 0; n < pairs; n++) {
    const at = start + 2 * n;
    const to = order[n] ?? 0;
    const a = (isInside ? (samples[at] ?? 0) : sampleAt(samples, at)) * (window[2 * n] ?? 0);
    const b = (isInside ? (samples[at + 1] ?? 0) : sampleAt(samples, at + 1)) * (window[2 * n + 1] ?? 0);
    re[to] = a;
    im[to] = b;
    if (!isPaired) continue;
    re[to + 1] = a;
    im[to + 1] = b;
  }
  if (!isPaired)
    for (let n = pairs; n < re.length; n++) {
      const to = order[n] ?? 0;
      re[to] = 0;
      im[to] = 0;
    }
  fft.run(isPaired);
}

function sampleAt(samples: Float32Array, at: number): number {
  return at >= 0 && at < samples.length ? (samples[at] ?? 0) : 0;
}
