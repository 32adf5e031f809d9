// A chord as pitch classes: what bass and keys may sound over it.

import { modulo } from '#core';
import { type Chord, chordTones } from '../chord/chord.ts';
import type { ChordQualityId } from '../chord/quality.ts';
import { pitchClass } from '../pitch/pitch.ts';

/**
 * Tensions that a player adds to a plain symbol without changing what it means, as semitones above the root. Common
 * practice, no source: ninth on major, minor and dominant sevenths, thirteenth on dominants and sixths, eleventh on
 * minor. What the symbol names itself stands in its own tones.
 */
const tensions: Partial<Record<ChordQualityId, readonly number[]>> = {
  major_7: [2, 9],
  major_6: [2],
  dominant_7: [2, 9],
  minor_7: [2, 5],
  minor_6: [2],
  minor_major_7: [2],
  half_diminished: [5],
  dominant_9: [9],
  dominant_7_sus4: [2, 9],
  major_9: [9],
  minor_9: [5],
  dominant_7_sharp11: [2, 9],
  major_7_sharp11: [2],
};

/** Semitones 0 to 11 above C of the bass note: the root, or what stands after the stroke. */
export const bassClass = (chord: Chord): number => pitchClass(chord.bass ?? chord.root);

/** Pitch classes of the chord's own tones, the root first. */
export const toneClasses = (chord: Chord): readonly number[] => chordTones(chord).map(pitchClass);

/** Pitch classes of tensions that may be added, as many as are usual. */
export const tensionClasses = (chord: Chord): readonly number[] =>
  (tensions[chord.quality.id] ?? []).map((up) => (pitchClass(chord.root) + up) % 12);

/** Everything that belongs to the chord: its tones, its bass, its tensions. */
export const allClasses = (chord: Chord): ReadonlySet<number> =>
  new Set([...toneClasses(chord), bassClass(chord), ...tensionClasses(chord)]);

/** The MIDI number of a pitch class nearest to another number; of two as near the lower. */
export function nearestMidi(pitchClassWanted: number, to: number): number {
  const up = modulo(pitchClassWanted - to, 12);
  return up < 6 ? to + up : to + up - 12;
}
