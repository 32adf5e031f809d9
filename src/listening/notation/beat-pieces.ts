// A take's time cut into pieces that notation can show: whole notes and rests cut where beats of triplets begin and end, and
// every border moved to a place its beat has a value for.

import { ticksPerBeat } from '../alignment/slots.ts';

/** A stretch of time with one note or none, in twelfths of a beat. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  /** Index of the heard note; null in a rest. */
  readonly note: number | null;
  /** Whether the note goes on in the next piece. */
  readonly goesOn: boolean;
}

/** Ticks of the smallest value in a beat: 3 in halves and quarters, 4 or 2 in thirds. */
export type BeatUnit = 2 | 3 | 4;

/** The unit of every beat from `firstBeat` on. */
export function chooseUnits(
  borders: readonly number[],
  firstBeat: number,
  beats: number,
  isCompound: boolean,
): readonly BeatUnit[] {
  if (isCompound) return Array.from({ length: beats }, () => 2);
  const thirds = new Array<number>(beats).fill(0);
  const quarters = new Array<number>(beats).fill(0);
  const sixths = new Array<number>(beats).fill(0);
  for (const border of borders) {
    const beat = Math.floor(border / ticksPerBeat) - firstBeat;
    const within = border - (beat + firstBeat) * ticksPerBeat;
    if (within === 4 || within === 8) thirds[beat] = (thirds[beat] ?? 0) + 1;
    else if (within === 2 || within === 10) sixths[beat] = (sixths[beat] ?? 0) + 1;
    else if (within !== 0) quarters[beat] = (quarters[beat] ?? 0) + 1;
  }
  return thirds.map((count, beat) => {
    const fine = sixths[beat] ?? 0;
    if (count + fine <= (quarters[beat] ?? 0)) return 3;
    return fine > 0 ? 2 : 4;
  });
}

/** The nearest place a beat has a value for. */
export function snap(tick: number, units: readonly BeatUnit[], firstBeat: number): number {
  const beat = Math.floor(tick / ticksPerBeat);
  const unit = units[beat - firstBeat] ?? 3;
  return beat * ticksPerBeat + Math.round((tick - beat * ticksPerBeat) / unit) * unit;
}

/** Notes and the rests between them, from `from` to `to` without a gap, cut at the edges of beats in thirds. */
export function cutPieces(
  notes: readonly { readonly from: number; readonly to: number; readonly note: number }[],
  span: { readonly from: number; readonly to: number },
  cuts: readonly number[],
): readonly Piece[] {
  const whole: Piece[] = [];
  let at = span.from;
  for (const { from, to, note } of notes) {
    if (to <= from || from < at) continue;
    if (from > at) whole.push({ from: at, to: from, note: null, goesOn: false });
    whole.push({ from, to, note, goesOn: false });
    at = to;
  }
  if (at < span.to) whole.push({ from: at, to: span.to, note: null, goesOn: false });
  return whole.flatMap((piece) => {
    const inside = [...new Set(cuts)].filter((cut) => cut > piece.from && cut < piece.to);
    const edges = [piece.from, ...inside, piece.to];
    return edges.slice(1).map((to, i): Piece => {
      const from = edges[i] ?? piece.from;
      return { ...piece, from, to, goesOn: piece.note !== null && to < piece.to };
    });
  });
}
