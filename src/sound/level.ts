// Brings a track to a stated loudness without clipping: one gain for all of it, and where a peak would then stand over the
// ceiling, a limiter that looks ahead and turns it down for a few milliseconds.

import type { StereoSound } from './band.ts';
import { createLoudnessMeter, truePeakDb, truePeaks } from './loudness.ts';

/** Loudness of backing tracks in LUFS, and the ceiling of their peaks in dBTP. */
export const target = { loudness: -16, peak: -1 } as const;

const lookAheadSeconds = 0.0015;
const reachOf = (sampleRate: number) => Math.max(8, Math.round(lookAheadSeconds * sampleRate));
/** The limiter takes a little loudness away; after this many rounds what is missing is far below what can be heard. */
const rounds = 4;

/** Sound that can be read from anywhere, as often as wanted: in memory or in a file. */
export interface StoredSound {
  /** Samples in all. */
  readonly length: number;
  readonly sampleRate: number;
  /** Samples from one place to before another. */
  read(from: number, to: number): Pick<StereoSound, 'left' | 'right'>;
}

export interface Level {
  /** The factor that every sample is multiplied by before the limiter. */
  readonly gain: number;
  /** LUFS and dBTP as measured afterwards. */
  readonly loudness: number;
  readonly peak: number;
}

/** Samples handled at a time. */
const pieceLength = 1 << 17;

/** The gain that brings a sound to the target, and what is measured with it. Silence stays as it is. */
export function findLevel(sound: StoredSound): Level {
  let gain = 1;
  let measured = measure(untouched(sound), sound.sampleRate);
  if (measured.loudness <= -70) return { gain, ...measured };
  for (let round = 0; round < rounds && Math.abs(measured.loudness - target.loudness) > 0.05; round++) {
    gain *= 10 ** ((target.loudness - measured.loudness) / 20);
    measured = measure(levelledPieces(sound, gain), sound.sampleRate);
  }
  return { gain, ...measured };
}

/** The sound with a gain and the limiter, piece by piece. */
export function* levelledPieces(sound: StoredSound, gain: number): Generator<StereoSound> {
  const { length, sampleRate } = sound;
  // What the limiter does at a sample hangs on no sample further away than this.
  const margin = 3 * reachOf(sampleRate) + 64;
  for (let from = 0; from < length; from += pieceLength) {
    const to = Math.min(length, from + pieceLength);
    const begin = Math.max(0, from - margin);
    const { left, right } = sound.read(begin, Math.min(length, to + margin));
    const turned = limited(amplified(left, gain), amplified(right, gain), sampleRate); // of our own copies
    const [own, other] = turned.map((samples) => samples.subarray(from - begin, to - begin));
    if (own !== undefined && other !== undefined) yield { left: own, right: other, sampleRate };
  }
}

function* untouched({ length, read }: StoredSound): Generator<Pick<StereoSound, 'left' | 'right'>> {
  for (let from = 0; from < length; from += pieceLength)
    yield read(from, Math.min(length, from + pieceLength));
}

function measure(
  pieces: Iterable<Pick<StereoSound, 'left' | 'right'>>,
  sampleRate: number,
): Omit<Level, 'gain'> {
  const meter = createLoudnessMeter([1, 1], sampleRate);
  let peak = Number.NEGATIVE_INFINITY;
  for (const { left, right } of pieces) {
    meter.add([left, right]);
    peak = Math.max(peak, truePeakDb([left, right]));
  }
  return { loudness: meter.loudness(), peak };
}

function amplified(samples: Float32Array, gain: number): Float32Array {
  const louder = new Float32Array(samples.length);
  for (let at = 0; at < samples.length; at++) louder[at] = (samples[at] ?? 0) * gain;
  return louder;
}

function limited(left: Float32Array, right: Float32Array, sampleRate: number): [Float32Array, Float32Array] {
  // A hair below the ceiling: the gain itself bends the wave a little.
  const ceiling = 10 ** ((target.peak - 0.1) / 20);
  const [peaksLeft, peaksRight] = [truePeaks(left), truePeaks(right)];
  const need = new Float32Array(left.length);
  let isOver = false;
  for (let at = 0; at < need.length; at++) {
    const peak = Math.max(peaksLeft[at] ?? 0, peaksRight[at] ?? 0);
    isOver ||= peak > ceiling;
    need[at] = peak > ceiling ? ceiling / peak : 1;
  }
  if (!isOver) return [left, right];
  const reach = reachOf(sampleRate);
  const gains = smoothed(lowestWithin(need, reach), reach);
  for (let at = 0; at < gains.length; at++) {
    const gain = gains[at] ?? 1;
    left[at] = (left[at] ?? 0) * gain;
    right[at] = (right[at] ?? 0) * gain;
  }
  return [left, right];
}

/** The lowest value within `reach` to both sides, by a queue of candidates. */
function lowestWithin(values: Float32Array, reach: number): Float32Array {
  const lowest = new Float32Array(values.length);
  const queue: number[] = [];
  let head = 0;
  for (let at = 0; at < values.length + reach; at++) {
    const value = values[at];
    if (value !== undefined) {
      while (queue.length > head && (values[queue.at(-1) ?? 0] ?? 1) >= value) queue.pop();
      queue.push(at);
    }
    while ((queue[head] ?? at) < at - 2 * reach) head++;
    if (at >= reach) lowest[at - reach] = values[queue[head] ?? 0] ?? 1;
  }
  return lowest;
}

/** The mean within half the reach: never above a value that holds for the whole reach. */
function smoothed(values: Float32Array, reach: number): Float32Array {
  const half = Math.floor(reach / 2);
  const means = new Float32Array(values.length);
  let sum = 0;
  let count = 0;
  for (let at = 0; at < values.length + half; at++) {
    const entering = values[at];
    if (entering !== undefined) {
      sum += entering;
      count++;
    }
    const leaving = values[at - 2 * half - 1];
    if (at - 2 * half - 1 >= 0 && leaving !== undefined) {
      sum -= leaving;
      count--;
    }
    if (at >= half) means[at - half] = sum / Math.max(1, count);
  }
  return means;
}
