// The take at one common rate, whatever rate it was recorded at, a stretch at a time: memory stays bounded however
// long the take is. Band-limited interpolation with a Kaiser-windowed sinc (Smith & Gossett 1984).

import { besselI0 } from './window.ts';

/** A recording read at a rate of its reader's choosing. */
export interface SampleReader {
  /** Samples per second of what `read` gives. */
  readonly rate: number;
  /** How many samples the whole recording has at that rate. */
  readonly length: number;
  /** Fills `output` with the samples from `start` on; outside the recording there is silence. */
  read(start: number, output: Float32Array): void;
}

/** Zero crossings of the sinc on either side: more are steeper and dearer. */
const zeroCrossings = 8;
/** Kaiser's β = 7 holds images 70 dB down. */
const kaiserBeta = 7;
/** The pass band ends at this share of the lower Nyquist frequency. */
const rollOff = 0.92;
/** Most phases of the filter that are tabled; odd ratios take the nearest. */
const mostPhases = 640;

/** Samples that are read at a time. */
const piece = 512;

/**
 * Reads `samples`, recorded at `sampleRate` hertz, at `rate` hertz. Samples that are no finite number count as silence.
 */
export function createSampleReader(samples: Float32Array, sampleRate: number, rate: number): SampleReader {
  const step = sampleRate / rate;
  const length = Math.floor(samples.length / step);
  const cutoff = Math.min(1, rate / sampleRate) * rollOff;
  const reach = Math.ceil(zeroCrossings / cutoff);
  const phases = phaseCount(step);
  const kernel = createKernel(phases, reach, cutoff);
  const taps = kernel.length / phases;
  // What one piece is read from, as doubles and without holes: every sample of it is used many times over.
  const near = new Float64Array(Math.ceil(piece * step) + taps + 2);

  function read(start: number, output: Float32Array): void {
    for (let done = 0; done < output.length; done += piece) {
      const first = Math.floor((start + done) * step) - reach + 1;
      copyClean(samples, first, near);
      const count = Math.min(piece, output.length - done);
      for (let n = 0; n < count; n++) {
        const position = (start + done + n) * step;
        let whole = Math.floor(position);
        let phase = Math.round((position - whole) * phases);
        if (phase === phases) {
          phase = 0;
          whole++;
        }
        output[done + n] = limit(weigh(near, whole - reach + 1 - first, kernel, phase * taps, taps));
      }
    }
  }

  return { rate, length, read };
}

/** Fills `into` with the samples from `first` on; silence outside the recording and where a sample is no number. */
function copyClean(samples: Float32Array, first: number, into: Float64Array): void {
  for (let k = 0; k < into.length; k++) {
    const at = first + k;
    const sample = at >= 0 && at < samples.length ? (samples[at] ?? 0) : 0;
    // what is no finite number is no number less itself
    into[k] = sample - sample === 0 ? sample : 0;
  }
}

/** The sum of `count` products (a multiple of four), as four sums side by side. */
function weigh(samples: Float64Array, from: number, kernel: Float64Array, at: number, count: number): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let k = 0; k < count; k += 4) {
    const s = from + k;
    const w = at + k;
    a += (samples[s] ?? 0) * (kernel[w] ?? 0);
    b += (samples[s + 1] ?? 0) * (kernel[w + 1] ?? 0);
    c += (samples[s + 2] ?? 0) * (kernel[w + 2] ?? 0);
    d += (samples[s + 3] ?? 0) * (kernel[w + 3] ?? 0);
  }
  return a + b + (c + d);
}

/** Full scale is 1; files in other units must not overflow what comes after. */
function limit(value: number): number {
  return Math.max(-8, Math.min(8, value));
}

/** The number of different fractions of a sample that reading at this step meets, or the most that are tabled. */
function phaseCount(step: number): number {
  for (let phases = 1; phases <= mostPhases; phases++) {
    const fraction = step * phases;
    if (Math.abs(fraction - Math.round(fraction)) < 1e-9) return phases;
  }
  return mostPhases;
}

/** A row of taps for every phase; rows are filled up with zeros to a multiple of four. */
function createKernel(phases: number, reach: number, cutoff: number): Float64Array {
  const taps = 2 * reach;
  const row = 4 * Math.ceil(taps / 4);
  const kernel = new Float64Array(phases * row);
  const scale = besselI0(kaiserBeta);
  for (let phase = 0; phase < phases; phase++) {
    let sum = 0;
    for (let k = 0; k < taps; k++) {
      const distance = k - reach + 1 - phase / phases;
      const inside = 1 - (distance / reach) ** 2;
      const window = inside <= 0 ? 0 : besselI0(kaiserBeta * Math.sqrt(inside)) / scale;
      const value = sinc(cutoff * distance) * window;
      kernel[phase * row + k] = value;
      sum += value;
    }
    // Every phase passes a constant unchanged.
    for (let at = phase * row; at < phase * row + taps; at++) kernel[at] = (kernel[at] ?? 0) / sum;
  }
  return kernel;
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}
