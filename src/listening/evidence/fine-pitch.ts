// Pitch of a moment to a fraction of a cent, where a first guess is known: the peak of the normalised square difference
// near the guess (McLeod and Wyvill 2005, A smarter way to find pitch, ICMC), between samples by a parabola.

import { frequencyToMidi, midiToFrequency } from '#music';

/** Clarity below which a moment has no pitch of its own. */
const leastClarity = 0.8;
/** Share of the period searched on either side of the guess: about half a semitone. */
const reach = 0.035;

/** Lags are first tried this part of a period apart, finer than the lobes of the brightest sound are wide. */
const coarseParts = 40;

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
  const clarityAt = createClarity(samples, start, window, low, high);
  const step = Math.max(1, Math.floor(period / coarseParts));
  let best = { lag: low, value: Number.NEGATIVE_INFINITY };
  const look = (from: number, to: number, by: number) => {
    for (let lag = from; lag <= to; lag += by) {
      const value = clarityAt(lag);
      if (value > best.value) best = { lag, value };
    }
  };
  look(low + 1, high - 1, step);
  if (step > 1) look(Math.max(low + 1, best.lag - step + 1), Math.min(high - 1, best.lag + step - 1), 1);
  if (best.value <= leastClarity) return null;
  const [left, right] = [clarityAt(best.lag - 1), clarityAt(best.lag + 1)];
  if (right > best.value) return null;
  const curve = left + right - 2 * best.value;
  const shift = curve < 0 ? (left - right) / (2 * curve) : 0;
  return frequencyToMidi(sampleRate / (best.lag + shift));
}

/** The normalised square difference of a window and the same window a lag (`low` … `high`) later: 1 where it repeats. */
function createClarity(
  samples: Float32Array,
  start: number,
  window: number,
  low: number,
  high: number,
): (lag: number) => number {
  const own = innerProduct(samples, start, start, window);
  // The later window's energy, moved on by a sample at a time.
  const energies = new Float64Array(high - low + 1);
  let energy = innerProduct(samples, start + low, start + low, window);
  for (let lag = low; lag <= high; lag++) {
    energies[lag - low] = energy;
    energy += (samples[start + lag + window] ?? 0) ** 2 - (samples[start + lag] ?? 0) ** 2;
  }
  const known = new Float64Array(high - low + 1).fill(Number.NaN);
  return (lag) => {
    const told = known[lag - low] ?? Number.NaN;
    if (!Number.isNaN(told)) return told;
    const cross = innerProduct(samples, start, start + lag, window);
    const value = (2 * cross) / (own + (energies[lag - low] ?? 0) + 1e-15);
    known[lag - low] = value;
    return value;
  };
}

/** The sum of products of two stretches, in two sums side by side. */
function innerProduct(samples: Float32Array, from: number, other: number, length: number): number {
  let a = 0;
  let b = 0;
  const even = length - (length % 2);
  for (let i = 0; i < even; i += 2) {
    a += (samples[from + i] ?? 0) * (samples[other + i] ?? 0);
    b += (samples[from + i + 1] ?? 0) * (samples[other + i + 1] ?? 0);
  }
  if (even < length) a += (samples[from + even] ?? 0) * (samples[other + even] ?? 0);
  return a + b;
}
