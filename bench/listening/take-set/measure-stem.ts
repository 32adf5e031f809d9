// The truth of one note, measured on its own sound before anything is mixed in: when it speaks, when it has died away,
// how loud it is and where its pitch lies. A recorded sample has an attack of its own and is not perfectly in tune, so
// the moment a player starts a note is not yet the moment it is heard.

import { frequencyToMidi, midiToFrequency } from '#music';

/** Level in dB over 5 ms around `at` (samples). */
export function envelope(sound: Float32Array, sampleRate: number): Float32Array {
  const hop = Math.round(sampleRate / 1000);
  const half = Math.round(sampleRate * 0.0025);
  const out = new Float32Array(Math.ceil(sound.length / hop));
  for (let k = 0; k < out.length; k++) {
    let sum = 0;
    const from = Math.max(0, k * hop - half);
    const to = Math.min(sound.length, k * hop + half);
    for (let i = from; i < to; i++) sum += (sound[i] ?? 0) ** 2;
    out[k] = 10 * Math.log10(sum / Math.max(1, to - from) + 1e-12);
  }
  return out;
}

export interface StemTruth {
  /** Seconds from the stem's start until the note is within 15 dB of the peak of its first 400 ms: listeners place the onset
   * of a tone 6 to 15 dB below its maximum (Vos and Rasch 1981, The perceptual onset of musical tones; from memory). */
  readonly onset: number;
  /** Until it has fallen 20 dB below where it was let go (or 40 dB below its peak, if it dies before). */
  readonly offset: number;
  /** Mean power between the two in dB relative to full scale. */
  readonly db: number;
}

/** Measures one stem; `held` is when it is let go. `fall` in dB below the peak counts as speaking. */
export function measureStem(sound: Float32Array, sampleRate: number, held: number, fall = 15): StemTruth {
  const level = envelope(sound, sampleRate);
  let peak = -200;
  for (let k = 0; k < Math.min(level.length, 400, Math.max(60, held * 1000)); k++)
    peak = Math.max(peak, level[k] ?? -200);
  let onset = 0;
  while (onset < level.length && (level[onset] ?? -200) < peak - fall) onset++;
  const let_ = Math.min(level.length - 1, Math.round(held * 1000));
  let atRelease = 0;
  let count = 0;
  for (let k = Math.max(onset, let_ - 30); k <= let_; k++, count++) atRelease += level[k] ?? -200;
  atRelease = count === 0 ? peak : atRelease / count;
  let offset = onset + 20;
  let whole = peak;
  for (; offset < level.length; offset++) {
    whole = Math.max(whole, level[offset] ?? -200);
    if ((level[offset] ?? -200) < whole - 40) break;
    if (offset > let_ && (level[offset] ?? -200) < atRelease - 20) break;
  }
  let power = 0;
  const a = Math.round((onset / 1000) * sampleRate);
  const b = Math.min(sound.length, Math.round((offset / 1000) * sampleRate));
  for (let i = a; i < b; i++) power += (sound[i] ?? 0) ** 2;
  return {
    onset: onset / 1000,
    offset: offset / 1000,
    db: 10 * Math.log10(power / Math.max(1, b - a) + 1e-12),
  };
}

/**
 * Pitch every `hop` seconds in MIDI numbers, near a known pitch: the normalised square difference (McLeod and Wyvill 2005)
 * searched within a semitone and a half only, so it cannot fall into the wrong octave. NaN where the sound does not repeat.
 */
export function measurePitch(
  sound: Float32Array,
  sampleRate: number,
  near: number,
  hop: number,
): Float64Array {
  const period = sampleRate / midiToFrequency(near);
  const low = Math.max(2, Math.floor(period / 1.09));
  const high = Math.ceil(period * 1.09);
  const window = Math.round(Math.max(0.02 * sampleRate, period * 3));
  const frames = Math.floor(sound.length / (hop * sampleRate)) + 1;
  const out = new Float64Array(frames).fill(Number.NaN);
  const nsdf = new Float64Array(high + 2);
  for (let k = 0; k < frames; k++) {
    const start = Math.round(k * hop * sampleRate - (window + period) / 2);
    if (start < 0 || start + window + high + 1 >= sound.length) continue;
    let best = -1;
    let bestLag = 0;
    for (let lag = low - 1; lag <= high + 1; lag++) {
      let cross = 0;
      let power = 1e-15;
      for (let i = start; i < start + window; i++) {
        const a = sound[i] ?? 0;
        const b = sound[i + lag] ?? 0;
        cross += a * b;
        power += a * a + b * b;
      }
      nsdf[lag] = (2 * cross) / power;
      if (lag >= low && lag <= high && (nsdf[lag] ?? 0) > best) [best, bestLag] = [nsdf[lag] ?? 0, lag];
    }
    if (best < 0.8) continue;
    const [l, m, r] = [nsdf[bestLag - 1] ?? 0, nsdf[bestLag] ?? 0, nsdf[bestLag + 1] ?? 0];
    const shift = l + r - 2 * m < 0 ? (l - r) / (2 * (l + r - 2 * m)) : 0;
    out[k] = frequencyToMidi(sampleRate / (bestLag + shift));
  }
  return out;
}
