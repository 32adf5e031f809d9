// Which scales go with a chord: suggestions a teacher can override. Common practice, no source (cf. Nettles & Graf 1997,
// Levine 1995, from memory); the rows of the shared reference table come first.

import type { ScaleId } from '../scale/scale.ts';
import type { ChordQualityId } from './quality.ts';

const scalesByQuality: Readonly<Record<ChordQualityId, readonly ScaleId[]>> = {
  major: ['major', 'major_pentatonic', 'lydian', 'mixolydian', 'phrygian_dominant'],
  minor: ['dorian', 'natural_minor', 'minor_pentatonic', 'phrygian'],
  diminished: ['locrian', 'diminished_whole_half'],
  augmented: ['whole_tone', 'lydian_augmented'],
  major_7: ['major', 'lydian', 'major_pentatonic'],
  dominant_7: ['mixolydian', 'bebop_dominant', 'blues', 'lydian_dominant', 'phrygian_dominant'],
  minor_7: ['dorian', 'natural_minor', 'minor_pentatonic', 'phrygian'],
  minor_major_7: ['melodic_minor', 'harmonic_minor'],
  half_diminished: ['locrian', 'locrian_natural_2'],
  diminished_7: ['diminished_whole_half'],
  augmented_7: ['whole_tone', 'altered'],
  augmented_major_7: ['lydian_augmented'],
  major_6: ['major', 'major_pentatonic', 'bebop_major', 'lydian'],
  minor_6: ['melodic_minor', 'dorian'],
  six_nine: ['major', 'major_pentatonic', 'lydian'],
  minor_six_nine: ['melodic_minor', 'dorian'],
  sus2: ['major', 'mixolydian'],
  sus4: ['mixolydian', 'major'],
  dominant_7_sus4: ['mixolydian'],
  dominant_9_sus4: ['mixolydian'],
  add9: ['major', 'major_pentatonic', 'lydian', 'mixolydian'],
  major_9: ['major', 'lydian'],
  dominant_9: ['mixolydian', 'bebop_dominant'],
  minor_9: ['dorian', 'natural_minor'],
  minor_11: ['dorian', 'natural_minor'],
  dominant_13: ['mixolydian', 'bebop_dominant'],
  dominant_7_flat9: ['phrygian_dominant', 'diminished_half_whole'],
  dominant_7_sharp9: ['diminished_half_whole', 'altered', 'blues'],
  dominant_7_sharp11: ['lydian_dominant'],
  dominant_7_flat13: ['phrygian_dominant', 'altered'],
  major_7_sharp11: ['lydian'],
  altered_dominant: ['altered'],
  power: ['major_pentatonic', 'minor_pentatonic'],
};

/** Scales on the chord's root that suit it, the plainest first. `minor_7` → Dorian, natural minor, … */
export function suggestScales(quality: ChordQualityId): readonly ScaleId[] {
  return scalesByQuality[quality];
}
