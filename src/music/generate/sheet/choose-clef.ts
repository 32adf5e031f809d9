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

// What a change of clef costs the reader, more inside a bar than at its start, and a start in another clef than the usual
// one, in ledger lines; common practice, no source.
const costOfChange = 6;
const costInsideBar = 2;
const costOfStart = 14;

/** Reading gets harder from the third ledger line on. */
function readingCost(clef: Clef, pitches: readonly Pitch[]): number {
  return pitches.reduce((sum, pitch) => {
    const lines = ledgerLines(clef, pitch);
    return sum + lines + Math.max(0, lines - 2);
  }, 0);
}

/** The notes from one place on where a clef may change to the next. */
export interface ClefStretch {
  readonly pitches: readonly Pitch[];
  /** Whether it begins a bar. */
  readonly opensBar: boolean;
}

/**
 * A clef for each stretch of a passage: few ledger lines, few changes, and if at all possible a start in the first clef. To
 * end in another counts as a change, since what comes next begins in the first again.
 */
export function clefsOfStretches(clefs: readonly Clef[], stretches: readonly ClefStretch[]): readonly Clef[] {
  const usual = present(clefs[0], 'a staff has a clef');
  let paths = clefs.map((clef) => ({ clefs: [] as readonly Clef[], last: usual, clef, cost: 0 }));
  for (const [i, { pitches, opensBar }] of stretches.entries()) {
    const change = i === 0 ? costOfStart : costOfChange + (opensBar ? 0 : costInsideBar);
    paths = clefs.map((clef) => {
      const lines = readingCost(clef, pitches);
      const ways = paths.map((path) => ({
        clefs: [...path.clefs, clef],
        last: clef,
        clef,
        cost: path.cost + lines + (path.last === clef ? 0 : change),
      }));
      return ways.reduce((a, b) => (b.cost < a.cost ? b : a));
    });
  }
  const ended = paths.map((path) => ({
    ...path,
    cost: path.cost + (path.last === usual ? 0 : costOfChange),
  }));
  return ended.reduce((a, b) => (b.cost < a.cost ? b : a)).clefs;
}
