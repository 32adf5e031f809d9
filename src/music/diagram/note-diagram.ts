// The small picture beside a note: however it is taken on this instrument.

import type { NoteFingering } from '../fingering/fingering.ts';
import { type Instrument, type InstrumentId, instrumentOf, openStrings } from '../instrument/instrument.ts';
import { formatPitch, formatPitchName, type WrittenPitch } from '../pitch/pitch.ts';
import { bowedDiagram } from './bowed-diagram.ts';
import { slideDiagram, valveDiagram } from './brass-diagram.ts';
import type { Drawing } from './drawing.ts';
import { fretboardDiagram } from './fretboard-diagram.ts';
import { holeDiagram } from './hole-diagram.ts';
import { keyboardDiagram } from './keyboard-diagram.ts';

function frettedDiagram(
  title: string,
  instrument: Instrument,
  { string, stop, finger }: { readonly string: number; readonly stop: number; readonly finger: unknown },
): Drawing {
  const strings = openStrings(instrument);
  return fretboardDiagram(
    title,
    strings.map((_open, i) =>
      strings.length - i === string
        ? { fret: stop, finger: typeof finger === 'number' ? finger : null }
        : { fret: null, finger: null },
    ),
    null,
    false,
  );
}

/** The diagram of one written note in one of its fingerings; null where the instrument has no such diagram. */
export function noteDiagram(id: InstrumentId, pitch: WrittenPitch, fingering: NoteFingering): Drawing | null {
  const instrument = instrumentOf(id);
  const title = `${instrument.name}, written ${formatPitch(pitch)}`;
  switch (fingering.kind) {
    case 'valves':
      return valveDiagram(title, fingering, fingering.valves.includes(4) ? 4 : 3);
    case 'slide':
      return slideDiagram(title, fingering);
    case 'fretted':
      return frettedDiagram(title, instrument, fingering);
    case 'bowed':
      return bowedDiagram(title, fingering, openStrings(instrument).map(formatPitchName));
    case 'keyboard':
      return keyboardDiagram(title, [{ pitch, finger: fingering.finger }]);
    case 'holes':
      return holeDiagram(id, title, fingering);
  }
}
