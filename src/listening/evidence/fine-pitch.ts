// Pitch of a moment to a fraction of a cent, where a first guess is known: the peak of the normalised square difference
// near the guess (McLeod and Wyvill 2005, A smarter way to find pitch, ICMC), between samples by a parabola.

import { frequencyToMidi, midiToFrequency } from '#music';

/** Clarity below which a moment has no pitch of its own. */
const leastClarity = 0.8;
/** Share of the period searched on either side of the guess: about half a semitone. */
const reach = 0.035;

/** The pitch around `seconds` as a MIDI number, or null where the sound does not repeat near the guess. */
export function finePitch(
  samples: Float32Array,
  sampleRate: number,
  seconds: number,
  guess: number,
): number | null {
  const period = sampleRate / midiToFrequency(guess);
  const window = Math.round(Math.max(0.016 * sampleRate, period * 2.5));
  const low = Math.floor(period * (1 - reach)) - 1;
  const high = Math.ceil(period * (1 + reach)) + 1;
  const start = Math.round(seconds * sampleRate - (window + period) / 2);
  if (low < 2 || start < 0 || start + window + high >= samples.length) return null;
  let last = 0;
  let best = { value: leastClarity, lag: -1, left: 0, right: 0 };
  for (let lag = low; lag <= high; lag++) {
    let [cross, power] = [0, 1e-15];
    for (let i = start; i < start + window; i++) {
      const a = samples[i] ?? 0;
      const b = samples[i + lag] ?? 0;
      cross += a * b;
      power += a * a + b * b;
    }
    const value = (2 * cross) / power;
    if (best.lag === lag - 1) best = { ...best, right: value };
    if (lag > low && lag < high && value > best.value) best = { value, lag, left: last, right: value };
    last = value;
  }
  if (best.lag < 0 || best.right > best.value) return null;
  const curve = best.left + best.right - 2 * best.value;
  const shift = curve < 0 ? (best.left - best.right) / (2 * curve) : 0;
  return frequencyToMidi(sampleRate / (best.lag + shift));
}
