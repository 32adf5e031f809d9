// What is known at every moment of 10 ms before notes are cut: the pitch chosen, whether the player sounds at all, and
// how surely something begins.

import { weighOnsets } from '../onset/onset-evidence.ts';
import { candidateCount } from '../pitch-track/candidates.ts';
import { findSwing } from '../pitch-track/find-swing.ts';
import type { Observation } from '../pitch-track/observe-take.ts';
import { risesPerMoment } from '../pitch-track/observe-take.ts';
import { stillVibrato } from '../pitch-track/still-vibrato.ts';
import { quantile } from '../signal/spans.ts';

/** What is known at every moment of 10 ms. */
export interface Moments {
  readonly count: number;
  /** Fractional MIDI pitch, 0 where none is heard. */
  readonly midi: Float32Array;
  /** Half the period of the vibrato a moment belongs to, in moments; 0 where there is none. */
  readonly swing: Uint8Array;
  /** The pitch with vibrato taken out. */
  readonly still: Float32Array;
  /** 0 … 1: how surely the player sounds at this moment (0 is silence). */
  readonly presence: Float32Array;
  /** 0 … 1: how surely something begins within a few moments of this one. */
  readonly onset: Float32Array;
  /** 0 … 1: how surely something begins just here. */
  readonly attack: Float32Array;
  /** Level in dB relative to full scale, without the steady noise. */
  readonly level: Float32Array;
}

/** How far below the loud moments (their 95th percentile) the player is still heard, dB. */
const dynamicRange = 36;
/** Softness of that threshold, dB. */
const gateWidth = 2;
/** Periodicity at which a moment begins to speak for a note, and how fast it does from there. */
const leastStrength = 0.4;
const strengthSlope = 2.5;
/** Semitones per moment at which a gliding pitch counts half: neither the note before nor the one after. */
const glide = 0.2;
/** What is left of an attack inside a vibrato: loudness and spectrum swing with the pitch. */
const swingAttack = 0.7;
/** Moments on either side of an attack at which a new pitch may take it as its own. */
const attackReach = 3;

/** Gathers the moments from what was observed and the path chosen through it. */
export function gatherMoments(observation: Observation, path: Int8Array): Moments {
  const { count, level } = observation;
  const midi = new Float32Array(count);
  const strength = new Float32Array(count);
  const rise = new Float32Array(count);
  for (let t = 0; t < count; t++) {
    for (let r = 0; r < risesPerMoment; r++)
      rise[t] = Math.max(rise[t] ?? 0, observation.rise[t * risesPerMoment + r] ?? 0);
    const k = path[t] ?? -1;
    if (k < 0) continue;
    midi[t] = observation.midi[t * candidateCount + k] ?? 0;
    strength[t] = observation.strength[t * candidateCount + k] ?? 0;
  }
  const attack = weighOnsets({ count, midi, strength, level, fresh: observation.fresh, rise });
  const swing = findSwing(midi, attack);
  for (let t = 0; t < count; t++) if ((swing[t] ?? 0) > 0) attack[t] = swingAttack * (attack[t] ?? 0);
  return {
    count,
    midi,
    swing,
    still: stillVibrato(midi, attack, swing),
    level,
    attack,
    onset: spread(attack, attackReach),
    presence: weighPresence(observation, midi, strength, swing),
  };
}

/** The same moments, where something begins weighed by `odds` too: natural logs, one per moment. */
export function leanMoments(moments: Moments, odds: Float32Array): Moments {
  const attack = moments.attack.map((sure, t) =>
    sure <= 0 || sure >= 1 ? sure : 1 / (1 + ((1 - sure) / sure) * Math.exp(-(odds[t] ?? 0))),
  );
  return {
    ...moments,
    attack,
    still: stillVibrato(moments.midi, attack, moments.swing),
    onset: spread(attack, attackReach),
  };
}

function weighPresence(
  observation: Observation,
  midi: Float32Array,
  strength: Float32Array,
  swing: Uint8Array,
): Float32Array {
  const { count, level, noise } = observation;
  const presence = new Float32Array(count);
  const gate = quantile(level, 0.95) - dynamicRange;
  for (let t = 0; t < count; t++) {
    if ((midi[t] ?? 0) === 0) continue;
    const above = (level[t] ?? -120) - Math.max(gate, noise[t] ?? -120);
    const periodic = Math.max(0, Math.min(1, ((strength[t] ?? 0) - leastStrength) * strengthSlope));
    const before = midi[t - 2] ?? 0;
    const after = midi[t + 2] ?? 0;
    const isGliding = (swing[t] ?? 0) === 0 && before > 0 && after > 0;
    const slope = isGliding ? Math.abs(after - before) / 4 : 0;
    const steady = slope < 0.75 ? 1 / (1 + (slope / glide) ** 2) : 1;
    presence[t] = (periodic * steady) / (1 + Math.exp(-above / gateWidth));
  }
  return presence;
}

function spread(values: Float32Array, reach: number): Float32Array {
  return values.map((_, t) => {
    let best = 0;
    for (let s = t - reach; s <= t + reach; s++) best = Math.max(best, values[s] ?? 0);
    return best;
  });
}
