// How much of the playing, well inside its notes, repeats less clearly than one voice does: two voices at once have no
// common period that fits both.

import { midiToFrequency } from '#music';
import { candidateCount, octaveCost } from '../pitch-track/candidates.ts';
import { hop, type Observation } from '../pitch-track/observe-take.ts';
import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';

/** Moments at most this far below the loud ones are looked at, dB. */
const loudReach = 15;
/** Moments around a note's beginning and end that say nothing. */
const beforeEdge = 5;
const afterEdge = 6;
/** Periodicity of one voice inside a note, without what favours high pitches. */
const clear = 0.8;

/** The share of the loud moments, away from where notes begin and end, that are unclear; 0 … 1. */
export function unclearInside(
  observation: Observation,
  path: Int8Array,
  notes: readonly HeardNote[],
): number {
  const { count, level, midi, strength } = observation;
  const isEdge = new Uint8Array(count);
  for (const note of notes)
    for (const edge of [note.onset, note.offset]) {
      const at = Math.round(edge / hop);
      isEdge.fill(1, Math.max(0, at - beforeEdge), Math.max(0, at + afterEdge + 1));
    }
  const threshold = quantile(level, 0.95) - loudReach;
  let loud = 0;
  let unclear = 0;
  for (let t = 0; t < count; t++) {
    if (isEdge[t] === 1 || (level[t] ?? -120) < threshold) continue;
    loud++;
    const k = path[t] ?? -1;
    const place = t * candidateCount + k;
    const favour = k < 0 ? 0 : octaveCost * Math.log2(midiToFrequency(midi[place] ?? 69) / 440);
    if (k < 0 || (strength[place] ?? 0) - favour < clear) unclear++;
  }
  return loud === 0 ? 0 : unclear / loud;
}
