// The clef that a passage needs fewest ledger lines in.

import { present } from '#core';
import type { Clef, WrittenRange } from '../../instrument/instrument.ts';
import { type Pitch, staffStep } from '../../pitch/pitch.ts';

/** Letter steps above C0 of each clef's bottom line, as the pitch is written in a score. */
const bottomLines: Readonly<Record<Clef, number>> = {
  treble: 30, // E4
  treble_8: 23, // E3
  bass: 18, // G2
  alto: 24, // F3
  tenor: 22, // D3
};

/** Where a line lies best, in letter steps above C0: half-way between the middle of the range and the middle of the staff. */
export function comfortableMiddle(range: WrittenRange, clef: Clef): number {
  return (staffStep(range.low) + staffStep(range.high)) / 4 + (bottomLines[clef] + 4) / 2;
}

/** Ledger lines a pitch needs in a clef. Middle C in the treble clef → 1 */
export function ledgerLines(clef: Clef, pitch: Pitch): number {
  const above = staffStep(pitch) - bottomLines[clef];
  if (above < 0) return Math.floor(-above / 2);
  return above > 8 ? Math.floor((above - 8) / 2) : 0;
}

/** The first of some clefs, or another where it saves more than one ledger line a note. */
export function chooseClef(clefs: readonly Clef[], pitches: readonly Pitch[]): Clef {
  const usual = present(clefs[0], 'an instrument has a clef');
  const cost = (clef: Clef) => pitches.reduce((sum, pitch) => sum + ledgerLines(clef, pitch), 0);
  const saved = (clef: Clef) => (cost(usual) - cost(clef)) / Math.max(1, pitches.length);
  const best = clefs.reduce((a, b) => (saved(b) > saved(a) ? b : a), usual);
  return saved(best) > 1 ? best : usual;
}
