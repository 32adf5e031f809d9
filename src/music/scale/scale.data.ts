// Source: shared reference table of scales (standard theory; jazz names are common practice); see checks/theory.
// `signature` is the scale's own key signature in fifths from its tonic's major (Dorian -2); null: written without one.

export const scaleTable = [
  { id: 'major', names: ['major', 'Ionian'], degrees: '1 2 3 4 5 6 7', signature: 0 },
  { id: 'natural_minor', names: ['natural minor', 'Aeolian'], degrees: '1 2 b3 4 5 b6 b7', signature: -3 },
  { id: 'harmonic_minor', names: ['harmonic minor'], degrees: '1 2 b3 4 5 b6 7', signature: -3 },
  {
    id: 'melodic_minor',
    names: ['melodic minor', 'melodic minor ascending', 'jazz minor'],
    degrees: '1 2 b3 4 5 6 7',
    signature: -3,
  },
  { id: 'dorian', names: ['Dorian'], degrees: '1 2 b3 4 5 6 b7', signature: -2 },
  { id: 'phrygian', names: ['Phrygian'], degrees: '1 b2 b3 4 5 b6 b7', signature: -4 },
  { id: 'lydian', names: ['Lydian'], degrees: '1 2 3 #4 5 6 7', signature: 1 },
  { id: 'mixolydian', names: ['Mixolydian'], degrees: '1 2 3 4 5 6 b7', signature: -1 },
  { id: 'locrian', names: ['Locrian'], degrees: '1 b2 b3 4 b5 b6 b7', signature: -5 },
  { id: 'major_pentatonic', names: ['major pentatonic'], degrees: '1 2 3 5 6', signature: 0 },
  { id: 'minor_pentatonic', names: ['minor pentatonic'], degrees: '1 b3 4 5 b7', signature: -3 },
  { id: 'blues', names: ['blues', 'minor blues'], degrees: '1 b3 4 b5 5 b7', signature: -3 },
  { id: 'major_blues', names: ['major blues'], degrees: '1 2 b3 3 5 6', signature: 0 },
  { id: 'whole_tone', names: ['whole tone'], degrees: '1 2 3 #4 #5 b7', signature: null },
  {
    id: 'diminished_whole_half',
    names: ['diminished', 'whole-half diminished'],
    degrees: '1 2 b3 4 b5 b6 6 7',
    signature: null,
  },
  {
    id: 'diminished_half_whole',
    names: ['dominant diminished', 'half-whole diminished'],
    degrees: '1 b2 #2 3 #4 5 6 b7',
    signature: null,
  },
  { id: 'bebop_dominant', names: ['bebop dominant'], degrees: '1 2 3 4 5 6 b7 7', signature: -1 },
  { id: 'bebop_major', names: ['bebop major'], degrees: '1 2 3 4 5 #5 6 7', signature: 0 },
  {
    id: 'altered',
    names: ['altered', 'super-Locrian', 'diminished whole tone'],
    degrees: '1 b2 b3 b4 b5 b6 b7',
    signature: null,
  },
  {
    id: 'lydian_dominant',
    names: ['Lydian dominant', 'Lydian b7', 'overtone scale'],
    degrees: '1 2 3 #4 5 6 b7',
    signature: -1,
  },
  {
    id: 'locrian_natural_2',
    names: ['Locrian natural 2', 'half-diminished scale'],
    degrees: '1 2 b3 4 b5 b6 b7',
    signature: -5,
  },
  {
    id: 'phrygian_dominant',
    names: ['Phrygian dominant', 'Spanish Phrygian'],
    degrees: '1 b2 3 4 5 b6 b7',
    signature: -4,
  },
  { id: 'lydian_augmented', names: ['Lydian augmented'], degrees: '1 2 3 #4 #5 6 7', signature: 1 },
  { id: 'chromatic', names: ['chromatic'], degrees: '1 b2 2 b3 3 4 b5 5 b6 6 b7 7', signature: null },
] as const;
