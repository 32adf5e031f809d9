// How surely something new begins at a moment, from what changes there: the spectrum's rise, a dip of the level and
// its recovery, periodicity lost for an instant, a kink in the pitch. A logistic model over these marks, so that a
// repeated note is told from vibrato, tremolo and a swell; its weights are fitted (see SPEC.md, L5).

import { greatest, least, median } from '../signal/spans.ts';

/** What the marks are taken from, one value per moment of 10 ms. */
export interface OnsetInput {
  readonly count: number;
  /** Fractional MIDI pitch, 0 where none is heard. */
  readonly midi: Float32Array;
  /** Periodicity of that pitch. */
  readonly strength: Float32Array;
  /** dB, and the same of what is new, without the tail of earlier sound. */
  readonly level: Float32Array;
  readonly fresh: Float32Array;
  /** Spectral rise, the larger of the moment's two, dB per band. */
  readonly rise: Float32Array;
}

/** Weights of the marks, in the order of `collectMarks`, and the bias last. */
const weights = [2.22, 0.71, 0.02, 0.83, -0.53, 1.08, 0.53, 0.67, 0.83, 0.41, -9.03];
/** A peak is the greatest within this many moments on either side. */
const peakReach = 4;
/** How much a decibel of rising level counts beside a decibel of spectral rise when peaks are looked for. */
const levelShare = 0.3;

/** How surely something begins at every moment: 0 … 1 where change peaks, 0 elsewhere. */
export function weighOnsets(input: OnsetInput): Float32Array {
  const { count } = input;
  const change = new Float32Array(count);
  for (let t = 0; t < count; t++) {
    const recovery = greatest(input.level, t, t + 6) - least(input.level, t - 4, t);
    change[t] = (input.rise[t] ?? 0) + levelShare * Math.max(0, recovery);
  }
  const attack = new Float32Array(count);
  for (let t = 0; t < count; t++) {
    if (!isPeak(change, t)) continue;
    const marks = collectMarks(input, t);
    let sum = weights[marks.length] ?? 0;
    for (let i = 0; i < marks.length; i++) sum += (weights[i] ?? 0) * (marks[i] ?? 0);
    attack[t] = 1 / (1 + Math.exp(-sum));
  }
  return attack;
}

/** The marks of one moment, each scaled to about 0 … 4. */
export function collectMarks(input: OnsetInput, t: number): readonly number[] {
  const { midi, strength, level, fresh, rise } = input;
  const usualRise = median(rise, t - 15, t + 15);
  const bottom = least(level, t - 5, t + 2);
  const drop = greatest(level, t - 20, t - 4) - bottom;
  const recovery = greatest(level, t, t + 10) - bottom;
  const freshBottom = least(fresh, t - 5, t + 2);
  const freshDrop = greatest(fresh, t - 20, t - 4) - freshBottom;
  const freshRecovery = greatest(fresh, t, t + 10) - freshBottom;
  const loss = median(strength, t - 12, t + 12) - least(strength, t - 4, t + 4);
  const kink = Math.abs(median(midi, t + 2, t + 6) - median(midi, t - 7, t - 3));
  let jump = 0;
  for (let s = t - 4; s <= t + 3; s++) {
    const a = midi[s] ?? 0;
    const b = midi[s + 1] ?? 0;
    if (a > 0 && b > 0) jump = Math.max(jump, Math.abs(b - a));
  }
  return [
    Math.log1p(2 * Math.max(0, greatest(rise, t - 2, t + 2) - usualRise)),
    Math.log1p(Math.max(0, Math.min(drop, recovery))),
    Math.log1p(Math.max(0, recovery)),
    5 * Math.min(loss, 0.4),
    5 * Math.min(kink, 0.3),
    5 * Math.min(jump, 0.5),
    Math.log1p(2 * usualRise),
    Math.log1p(Math.max(0, Math.min(freshDrop, freshRecovery))),
    Math.log1p(Math.max(0, steepest(level, t - 4, t + 3))),
    Math.log1p(Math.max(0, steepest(fresh, t - 4, t + 3))),
  ];
}

/** The largest rise within 20 ms. */
function steepest(values: Float32Array, from: number, to: number): number {
  let best = 0;
  for (let t = Math.max(0, from); t <= Math.min(values.length - 3, to); t++)
    best = Math.max(best, (values[t + 2] ?? 0) - (values[t] ?? 0));
  return best;
}

function isPeak(values: Float32Array, t: number): boolean {
  const here = values[t] ?? 0;
  for (let s = Math.max(0, t - peakReach); s <= Math.min(values.length - 1, t + peakReach); s++) {
    const other = values[s] ?? 0;
    if (other > here || (other === here && s < t)) return false;
  }
  return true;
}
