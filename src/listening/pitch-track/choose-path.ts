// Which candidate sounds at each moment, or none: the path of the best sum of strengths less the cost of jumps
// (Viterbi 1967; costs in the manner of Boersma 1993, eq. 26-27).

import { candidateCount } from './candidates.ts';

/** Candidates of all moments in turn, `candidateCount` places per moment, on a fixed hop. */
export interface CandidateTrack {
  readonly midi: Float32Array;
  readonly strength: Float32Array;
}

/** Costs of the path, in units of strength per moment of 10 ms. */
export interface PathCosts {
  /** A pitch must be stronger than this to be chosen before silence. */
  readonly threshold: number;
  /** Changing pitch, per octave, up to `mostJump`. */
  readonly perOctave: number;
  readonly mostJump: number;
  /** Starting or ending a pitch. */
  readonly voicing: number;
}

/** The index of the candidate chosen at each moment, -1 for none. */
export function choosePath(track: CandidateTrack, costs: PathCosts): Int8Array {
  const moments = track.midi.length / candidateCount;
  const states = candidateCount + 1;
  const silent = candidateCount;
  const from = new Int8Array(moments * states);
  let scores = new Float64Array(states).fill(-1e9);
  let next = new Float64Array(states);
  scores[silent] = 0;
  for (let t = 0; t < moments; t++) {
    const row = t * candidateCount;
    const before = row - candidateCount;
    for (let s = 0; s < states; s++) {
      const strength = s === silent ? costs.threshold : (track.strength[row + s] ?? 0);
      if (s !== silent && strength === 0) {
        next[s] = -1e9;
        continue;
      }
      const midi = s === silent ? 0 : (track.midi[row + s] ?? 0);
      let best = -Infinity;
      let bestFrom = silent;
      for (let r = 0; r < states; r++) {
        const score = scores[r] ?? 0;
        if (score < -1e8) continue;
        let cost = 0;
        if ((r === silent) !== (s === silent)) cost = costs.voicing;
        else if (s !== silent) {
          const leap = Math.abs((track.midi[before + r] ?? 0) - midi) / 12;
          cost = Math.min(costs.mostJump, costs.perOctave * leap);
        }
        if (score - cost > best) {
          best = score - cost;
          bestFrom = r;
        }
      }
      next[s] = best + strength;
      from[t * states + s] = bestFrom;
    }
    [scores, next] = [next, scores];
  }
  const path = new Int8Array(moments).fill(-1);
  let state = silent;
  for (let s = 0; s < states; s++) if ((scores[s] ?? 0) > (scores[state] ?? 0)) state = s;
  for (let t = moments - 1; t >= 0; t--) {
    path[t] = state === silent ? -1 : state;
    state = from[t * states + state] ?? silent;
  }
  return path;
}
