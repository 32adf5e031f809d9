// A chord shape as players know it from a chart.

import { type Chord, formatChord } from '../chord/chord.ts';
import type { ChordVoicing } from '../fingering/chord-voicing.ts';
import type { InstrumentId } from '../instrument/instrument.ts';
import { instrumentOf } from '../instrument/instrument.ts';
import type { Drawing } from './drawing.ts';
import { fretboardDiagram } from './fretboard-diagram.ts';

/** The box of one voicing, titled with the chord's symbol. */
export function chordDiagram(id: InstrumentId, chord: Chord, voicing: ChordVoicing): Drawing {
  const strings = voicing.frets.map((fret, i) => ({ fret, finger: voicing.fingers[i] ?? null }));
  return fretboardDiagram(`${instrumentOf(id).name}, ${formatChord(chord)}`, strings, voicing.barre, true);
}
