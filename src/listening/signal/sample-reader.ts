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

/**
 * Reads `samples`, recorded at `sampleRate` hertz, at `rate` hertz. Samples that are no finite number count as silence.
 */
export function createSampleReader(samples: Float32Array, sampleRate: number, rate: number): SampleReader {
  const step = sampleRate / rate;
  const length = Math.floor(samples.length / step);
  const cutoff = Math.min(1, rate / sampleRate) * rollOff;
  const reach = Math.ceil(zeroCrossings / cutoff);
  const taps = 2 * reach;
  const phases = phaseCount(step);
  const kernel = createKernel(phases, reach, cutoff);

  function read(start: number, output: Float32Array): void {
    for (let n = 0; n < output.length; n++) {
      const position = (start + n) * step;
      let whole = Math.floor(position);
      let phase = Math.round((position - whole) * phases);
      if (phase === phases) {
        phase = 0;
        whole++;
      }
      const first = whole - reach + 1;
      const row = phase * taps;
      let sum = 0;
      if (first >= 0 && first + taps <= samples.length) {
        for (let k = 0; k < taps; k++) sum += (samples[first + k] ?? 0) * (kernel[row + k] ?? 0);
      } else sum = Number.NaN;
      output[n] = limit(Number.isFinite(sum) ? sum : readWithCare(first, row));
    }
  }

  /** At the ends of the recording, and where a sample is no number: those count as silence. */
  function readWithCare(first: number, row: number): number {
    let sum = 0;
    const to = Math.min(taps, samples.length - first);
    for (let k = Math.max(0, -first); k < to; k++) {
      const sample = samples[first + k] ?? 0;
      if (Number.isFinite(sample)) sum += sample * (kernel[row + k] ?? 0);
    }
    return sum;
  }

  return { rate, length, read };
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

function createKernel(phases: number, reach: number, cutoff: number): Float32Array {
  const taps = 2 * reach;
  const kernel = new Float32Array(phases * taps);
  const scale = besselI0(kaiserBeta);
  for (let phase = 0; phase < phases; phase++) {
    let sum = 0;
    for (let k = 0; k < taps; k++) {
      const distance = k - reach + 1 - phase / phases;
      const inside = 1 - (distance / reach) ** 2;
      const window = inside <= 0 ? 0 : besselI0(kaiserBeta * Math.sqrt(inside)) / scale;
      const value = sinc(cutoff * distance) * window;
      kernel[phase * taps + k] = value;
      sum += value;
    }
    // Every phase passes a constant unchanged.
    for (let k = 0; k < taps; k++) kernel[phase * taps + k] = (kernel[phase * taps + k] ?? 0) / sum;
  }
  return kernel;
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}
