// On the beat or off it: when a grid was found from the playing alone, quavers fit it as well half a beat away. The opening
// note and long notes tell: lines begin on beats, and long notes stand on them (common practice, no source).

import type { HeardNote } from '../notes/heard-note.ts';
import { beatToSeconds, type Grid } from './grid.ts';
import { type Placement, quantise } from './quantise.ts';
import { ticksPerBeat } from './slots.ts';

const openingBonus = 3;
const longBonus = 0.6;
/** Swing says where the beat is by itself. */
const straight = 0.04;

/** The grid, moved by half a beat where that explains the playing better. */
export function settleBeat(
  notes: readonly HeardNote[],
  grid: Grid,
): { readonly grid: Grid; readonly placement: Placement } {
  const onsets = notes.map((note) => note.onset);
  const here = { grid, placement: quantise(onsets, grid, false) };
  if (Math.abs(grid.swing - 0.5) > straight) return here;
  const moved = moveGrid(grid, 0.5);
  const there = { grid: moved, placement: quantise(onsets, moved, false) };
  return explain(notes, there.placement) > explain(notes, here.placement) ? there : here;
}

function explain(notes: readonly HeardNote[], { placed, cost }: Placement): number {
  let score = -cost * notes.length;
  for (const [i, { tick }] of placed.entries()) {
    if (tick % ticksPerBeat !== 0) continue;
    const next = placed[i + 1]?.tick ?? tick + 2 * ticksPerBeat;
    if (i === 0) score += openingBonus;
    if (next - tick >= ticksPerBeat) score += longBonus;
  }
  return score;
}

/** The same grid with beat 0 a part of a beat later. */
function moveGrid(grid: Grid, beats: number): Grid {
  return {
    ...grid,
    offset: beatToSeconds(grid, beats),
    anchors: grid.anchors.map((anchor) => ({
      beat: anchor.beat,
      seconds: beatToSeconds(grid, anchor.beat + beats),
    })),
  };
}
