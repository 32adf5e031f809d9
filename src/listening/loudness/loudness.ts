// Loudness of a whole recording in LUFS, silence gated out. Source: ITU-R BS.1770-4 (2015): blocks of 400 ms overlapping by
// three quarters, gated at -70 LUFS and 10 LU under what is left.

import { filterSamples, kWeighting } from './k-weighting.ts';

const offset = -0.691;
const absoluteGate = -70;
const relativeGate = -10;

/**
 * Integrated loudness in LUFS of channels with their weights (1 for left, right and centre, 1.41 for surrounds); null when
 * nothing is louder than the gate. One channel counts as one front channel: a mono file reads 3 LU below the same in stereo.
 */
export function integratedLoudness(
  channels: readonly { readonly samples: Float32Array; readonly weight: number }[],
  sampleRate: number,
): number | null {
  const step = Math.round(0.1 * sampleRate);
  const block = step * 4;
  const length = channels[0]?.samples.length ?? 0;
  const powers = new Float64Array(Math.max(0, Math.floor((length - block) / step) + 1));
  for (const { samples, weight } of channels) {
    const weighted = filterSamples(samples, kWeighting(sampleRate));
    const sums = new Float64Array(Math.floor(length / step));
    for (let s = 0; s < sums.length; s++) {
      let sum = 0;
      for (let i = s * step; i < (s + 1) * step; i++) sum += (weighted[i] ?? 0) ** 2;
      sums[s] = sum;
    }
    for (let k = 0; k < powers.length; k++)
      powers[k] =
        (powers[k] ?? 0) +
        (weight * ((sums[k] ?? 0) + (sums[k + 1] ?? 0) + (sums[k + 2] ?? 0) + (sums[k + 3] ?? 0))) / block;
  }
  const gated = (gate: number) => powers.filter((power) => power > 0 && toLufs(power) > gate);
  const audible = gated(absoluteGate);
  if (audible.length === 0) return null;
  return toLufs(average(gated(Math.max(absoluteGate, toLufs(average(audible)) + relativeGate))));
}

function toLufs(power: number): number {
  return offset + 10 * Math.log10(power);
}

function average(powers: Float64Array): number {
  return powers.reduce((sum, power) => sum + power, 0) / powers.length;
}
