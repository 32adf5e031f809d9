// The part of a beginner's range that comes first: below the break on the clarinets, the low octave of the flutes, the notes
// without octave key on oboes (common practice, no source). Other instruments have their range to go by.

import type { Stage } from '#core';
import type { Instrument, WrittenRange } from '../instrument/instrument.ts';
import { type Pitch, written } from '../pitch/pitch.ts';

const span = (
  low: readonly [Pitch['letter'], number],
  high: readonly [Pitch['letter'], number],
): WrittenRange => ({
  low: written({ letter: low[0], alter: 0, octave: low[1] }),
  high: written({ letter: high[0], alter: 0, octave: high[1] }),
});

const chalumeau = span(['E', 3], ['A', 4]);
const withoutOctaveKey = span(['D', 4], ['C', 5]);
const registers: Readonly<Record<string, WrittenRange>> = {
  clarinet_bb: chalumeau,
  clarinet_a: chalumeau,
  bass_clarinet: chalumeau,
  flute: span(['D', 4], ['D', 5]),
  piccolo: span(['D', 4], ['D', 5]),
  oboe: withoutOctaveKey,
  cor_anglais: withoutOctaveKey,
};

/** Where a beginner plays most; null where the range itself says enough. */
export function easyRegister(instrument: Instrument, stage: Stage): WrittenRange | null {
  return stage === 'beginner' ? (registers[instrument.id] ?? null) : null;
}
