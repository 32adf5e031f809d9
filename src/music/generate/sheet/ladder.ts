// The notes of a scale or chord laid out through a range, lowest first.

import type { WrittenRange } from '../../instrument/instrument.ts';
import { nameAtOrAbove } from '../../pitch/interval.ts';
import { type Pitch, type PitchName, pitchToMidi, type WrittenPitch, written } from '../../pitch/pitch.ts';

export interface Rung {
  readonly pitch: WrittenPitch;
  /** Which of the names it is, from 0. */
  readonly degree: number;
}

/** All pitches of some names inside a range, lowest first. Names with one sound (a blues fifth and flat fifth no) once. */
export function ladder(names: readonly PitchName[], range: WrittenRange): readonly Rung[] {
  const high = pitchToMidi(range.high);
  const rungs = names.flatMap((name, degree) => {
    const found: Rung[] = [];
    let pitch: Pitch = nameAtOrAbove(name, range.low);
    while (pitchToMidi(pitch) <= high) {
      found.push({ pitch: written(pitch), degree });
      pitch = { ...pitch, octave: pitch.octave + 1 };
    }
    return found;
  });
  return rungs.sort((a, b) => pitchToMidi(a.pitch) - pitchToMidi(b.pitch));
}
