// Brings a track to a stated loudness without clipping: one gain for all of it, and where a peak would then stand over the
// ceiling, a limiter that looks ahead and turns it down for a few milliseconds.

import type { StereoSound } from './band.ts';
import { integratedLoudness, truePeakDb, truePeaks } from './loudness.ts';

/** Loudness of backing tracks in LUFS, and the ceiling of their peaks in dBTP. */
export const target = { loudness: -16, peak: -1 } as const;

const lookAheadSeconds = 0.0015;
/** The limiter takes a little loudness away; after this many rounds what is missing is far below what can be heard. */
const rounds = 4;

export interface Levelled extends StereoSound {
  /** LUFS and dBTP as measured afterwards. */
  readonly loudness: number;
  readonly peak: number;
}

/** The track at the target loudness. Silence stays as it is. */
export function levelTrack(sound: StereoSound): Levelled {
  const { sampleRate } = sound;
  const measure = ({ left, right }: Pick<StereoSound, 'left' | 'right'>) =>
    integratedLoudness(
      [
        { samples: left, weight: 1 },
        { samples: right, weight: 1 },
      ],
      sampleRate,
    );
  let loudness = measure(sound);
  let [left, right] = [sound.left, sound.right];
  if (loudness > -70) {
    let gain = 1;
    for (let round = 0; round < rounds && Math.abs(loudness - target.loudness) > 0.05; round++) {
      gain *= 10 ** ((target.loudness - loudness) / 20);
      [left, right] = limited(amplified(sound.left, gain), amplified(sound.right, gain), sampleRate);
      loudness = measure({ left, right });
    }
  }
  return { left, right, sampleRate, loudness, peak: truePeakDb([left, right]) };
}

const amplified = (samples: Float32Array, gain: number) => samples.map((sample) => sample * gain);

function limited(left: Float32Array, right: Float32Array, sampleRate: number): [Float32Array, Float32Array] {
  // A hair below the ceiling: the gain itself bends the wave a little.
  const ceiling = 10 ** ((target.peak - 0.1) / 20);
  const [peaksLeft, peaksRight] = [truePeaks(left), truePeaks(right)];
  const need = peaksLeft.map((peak, at) => Math.min(1, ceiling / Math.max(1e-9, peak, peaksRight[at] ?? 0)));
  if (need.every((gain) => gain === 1)) return [left, right];
  const reach = Math.max(8, Math.round(lookAheadSeconds * sampleRate));
  const gains = smoothed(lowestWithin(need, reach), reach);
  const turned = (samples: Float32Array) => samples.map((sample, at) => sample * (gains[at] ?? 1));
  return [turned(left), turned(right)];
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
