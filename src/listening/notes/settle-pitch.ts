// The pitch at every moment once the notes are known: inside a note the candidate near its key is the one that sounds,
// even where something else was stronger for an instant or the sound had almost died away.

import { candidateCount } from '../pitch-track/candidates.ts';
import { hop, type Observation } from '../pitch-track/observe-take.ts';
import type { HeardNote } from './heard-note.ts';

/** Semitones from the note's pitch within which a candidate is the note's. */
const near = 0.8;

/** Fractional MIDI pitch per moment, null where none is heard; `midi` is the path chosen before (0 where none). */
export function settlePitch(
  observation: Observation,
  midi: Float32Array,
  notes: readonly HeardNote[],
): readonly (number | null)[] {
  const settled = Float32Array.from(midi);
  for (const note of notes) {
    const pitch = note.midi + note.cents / 100;
    const to = Math.min(observation.count, Math.round(note.offset / hop));
    for (let t = Math.max(0, Math.round(note.onset / hop)); t < to; t++) {
      if (Math.abs((midi[t] ?? 0) - pitch) < near) continue;
      for (let k = 0; k < candidateCount; k++) {
        const candidate = observation.midi[t * candidateCount + k] ?? 0;
        if (candidate === 0 || Math.abs(candidate - pitch) >= near) continue;
        settled[t] = candidate;
        break;
      }
    }
  }
  return Array.from(settled, (pitch) => (pitch === 0 ? null : pitch));
}
