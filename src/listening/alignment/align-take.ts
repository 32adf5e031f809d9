// Alignment: heard notes laid on a grid and written as rhythm.

import { type Fraction, fraction } from '#music';
import { beatFrame, type TakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { fitGrid } from './fit-grid.ts';
import { type Grid, secondsToBeat } from './grid.ts';
import { findFirstBar, shiftGrid } from './place-bars.ts';
import { settleBeat } from './settle-beat.ts';
import { ticksPerBeat } from './slots.ts';
import { writtenLength } from './written-length.ts';

/** A heard note as it would be written. */
export interface RhythmNote {
  /** Index among the heard notes. */
  readonly note: number;
  /** Twelfths of a beat from bar 1; negative in an upbeat. */
  readonly tick: number;
  /** Written length in twelfths of a beat; silence up to the next note is rests. */
  readonly ticks: number;
  /** The same in semibreves, from bar 1. */
  readonly at: Fraction;
  readonly length: Fraction;
  /** Seconds late (positive) or early against the grid as played to, swing included. */
  readonly late: number;
  /** Whether another place in the bar, or another length, would fit nearly as well. */
  readonly isDoubtful: boolean;
}

// Cost of placing a note, natural units: of the take set at its worst, and of onsets at random (both measured in the bench).
const costsWithTempo = [1.4, 2.35] as const;
const costsWithoutTempo = [1, 1.75] as const;

export interface Alignment {
  readonly grid: Grid;
  readonly rhythm: readonly RhythmNote[];
  /** How much better the notes lie on the grid than notes at random would, 0 to 1; below 0.2 it is not relied on. */
  readonly fit: number;
}

/**
 * Lays heard notes (in order of time) on the grid of the context, or on one found from the playing. Null when there are too
 * few notes to find one. `ends` are the moments notes were let go, where they are known better than by their sound's end.
 */
export function alignTake(
  notes: readonly HeardNote[],
  context: TakeContext,
  ends: readonly number[] = notes.map((note) => note.offset),
): Alignment | null {
  const onsets = notes.map((note) => note.onset);
  const { beatLength, isCompound } = beatFrame(context.metre);
  const fitted = fitGrid(onsets, context);
  if (fitted === null) return null;
  const isKnown = fitted.grid.isGiven || isCompound || context.countInBeats > 0;
  const found = isKnown ? fitted : settleBeat(notes, fitted.grid);
  const { placed } = found.placement;
  const shift = found.grid.isGiven
    ? 0
    : findFirstBar(
        notes,
        placed.map((p) => p.tick),
        found.grid,
        context,
      );
  const grid = shift === 0 ? found.grid : shiftGrid(found.grid, shift);
  const ticks = placed.map((p) => p.tick - shift * ticksPerBeat);
  const beat = 60 / grid.tempo;
  const rhythm = notes.map((note, i): RhythmNote => {
    const tick = ticks[i] ?? 0;
    const next = notes[i + 1];
    const end = ends[i] ?? note.offset;
    const sounding = (secondsToBeat(grid, end) - secondsToBeat(grid, note.onset)) * ticksPerBeat;
    const length = writtenLength(
      tick,
      sounding,
      next === undefined ? null : (ticks[i + 1] ?? tick + 1),
      next === undefined ? 1 : next.onset - end,
    );
    const toFraction = (count: number) => fraction(count * beatLength.n, ticksPerBeat * beatLength.d);
    return {
      note: i,
      tick,
      ticks: length,
      at: toFraction(tick),
      length: toFraction(length),
      late: (placed[i]?.late ?? 0) * beat,
      isDoubtful:
        (placed[i]?.isDoubtful ?? true) || isLengthDoubtful(sounding, length) || note.confidence < 0.4,
    };
  });
  const [good, chance] = context.tempo === null ? costsWithoutTempo : costsWithTempo;
  const fit = Math.max(0, Math.min(1, (chance - found.placement.cost) / (chance - good)));
  return { grid, rhythm, fit };
}

/** Whether a note sounds for so much of its written length that it might be followed by a rest, or so little that it is not. */
function isLengthDoubtful(sounding: number, length: number): boolean {
  const share = sounding / length;
  return share > 0.5 && share < 0.7;
}
