// From pitch at every moment to notes: the sequence of notes and silences that best explains the pitch path, where a
// note costs something to begin and a heard onset pays for it. A hidden Markov model over silence and the semitones,
// solved by Viterbi, after Mauch et al. 2015 ("Tony"), with the onset evidence in its transitions.

import type { Moments } from './moments.ts';

/** A stretch of moments given to one semitone. */
export interface Segment {
  readonly from: number;
  /** First moment after it. */
  readonly to: number;
  readonly key: number;
}

/** Weights of the model, in units of one moment of certain pitch. */
export interface SegmentWeights {
  /** Cost of beginning a note. */
  readonly begin: number;
  /** How much of it a certain onset pays back. */
  readonly onsetBegin: number;
  /** Cost of beginning the same pitch again without a silence. */
  readonly repeat: number;
  readonly onsetRepeat: number;
  /** Cost per moment of silence inside a note, and per moment of sound left unexplained. */
  readonly gap: number;
  /** Semitones off the key at which a moment speaks neither for nor against it. */
  readonly width: number;
}

const lowestKey = 21;
const keys = 88;
/** Moments after which the same key can begin again: one attack must not count twice. */
const shortestRepeat = 6;

/** Cuts the moments into notes; `tuning` is where the player's keys lie, in semitones off equal temperament. */
export function segmentMoments(
  moments: Moments,
  tuning: number,
  weights: SegmentWeights,
): readonly Segment[] {
  const { count, still, presence, onset, attack } = moments;
  const states = keys + 1;
  // Per moment and state: 0 goes on, 1 begins after the best state before (kept apart), 2 the same key begins again.
  const began = new Uint8Array(count * states);
  const bestBefore = new Uint8Array(count);
  let scores = new Float64Array(states).fill(-1e9);
  let next = new Float64Array(states);
  const silence = keys;
  scores[silence] = 0;
  const since = new Int32Array(states);
  for (let t = 0; t < count; t++) {
    let best = silence;
    for (let s = 0; s < states; s++) if ((scores[s] ?? 0) > (scores[best] ?? 0)) best = s;
    bestBefore[t] = best;
    const bestScore = scores[best] ?? 0;
    const here = presence[t] ?? 0;
    const pitch = (still[t] ?? 0) - tuning - lowestKey;
    const on = onset[t] ?? 0;
    const beginCost = weights.begin - weights.onsetBegin * on;
    const repeatCost = weights.repeat - weights.onsetRepeat * (attack[t] ?? 0);
    const row = t * states;
    for (let s = 0; s < keys; s++) {
      const stay = scores[s] ?? 0;
      const start = bestScore - beginCost;
      const again = stay - repeatCost;
      let gain = -weights.gap;
      if (here > 0) {
        const off = Math.abs(pitch - s);
        gain = here * Math.max(-1.5, 1 - (off / weights.width) ** 2) - (1 - here) * weights.gap;
      }
      if (again > stay && again >= start && t - (since[s] ?? 0) >= shortestRepeat) {
        next[s] = again + gain;
        since[s] = t;
        began[row + s] = 2;
      } else if (start > stay && best !== s) {
        next[s] = start + gain;
        since[s] = t;
        began[row + s] = 1;
      } else next[s] = stay + gain;
    }
    const quiet = scores[silence] ?? 0;
    if (best !== silence && bestScore > quiet) {
      next[silence] = bestScore;
      began[row + silence] = 1;
    } else next[silence] = quiet;
    [scores, next] = [next, scores];
  }
  return traceBack(count, states, scores, began, bestBefore);
}

function traceBack(
  count: number,
  states: number,
  scores: Float64Array,
  began: Uint8Array,
  bestBefore: Uint8Array,
): readonly Segment[] {
  const silence = keys;
  let state = silence;
  for (let s = 0; s < states; s++) if ((scores[s] ?? 0) > (scores[state] ?? 0)) state = s;
  const segments: Segment[] = [];
  let to = count;
  for (let t = count - 1; t >= 0; t--) {
    const how = began[t * states + state] ?? 0;
    if (how === 0 && t > 0) continue;
    if (state !== silence) segments.push({ from: t, to, key: state + lowestKey });
    to = t;
    if (how !== 2) state = bestBefore[t] ?? silence;
  }
  return segments.reverse();
}
