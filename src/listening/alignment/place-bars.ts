// Which beat is the first of bar 1, when nobody said: after the count-in if there was one; otherwise where long notes,
// chord tones and the opening note make the best downbeats.

import { beatFrame, createHarmony, type TakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { beatToSeconds, type Grid } from './grid.ts';
import { ticksPerBeat } from './slots.ts';

/** How many beats the grid's own beat 0 lies before the first beat of bar 1. */
export function findFirstBar(
  notes: readonly HeardNote[],
  ticks: readonly number[],
  grid: Grid,
  context: TakeContext,
): number {
  const { beatsPerBar } = beatFrame(context.metre);
  const firstBeat = Math.floor((ticks[0] ?? 0) / ticksPerBeat);
  if (context.countInBeats > 0) {
    // the file starts with the count-in, give or take a beat of latency
    const wanted = (context.countInBeats * 60) / grid.tempo;
    const guess = Math.round((wanted - grid.offset) / (60 / grid.tempo));
    const near = [guess - 1, guess, guess + 1].sort(
      (a, b) => Math.abs(beatToSeconds(grid, a) - wanted) - Math.abs(beatToSeconds(grid, b) - wanted),
    )[0];
    if (near !== undefined && near <= firstBeat + beatsPerBar) return near;
  }
  const harmony = createHarmony(context);
  let best = { score: Number.NEGATIVE_INFINITY, shift: firstBeat };
  for (let back = 0; back < beatsPerBar; back++) {
    const shift = firstBeat - back;
    let score = back === 0 ? 3 : back === beatsPerBar - 1 ? 0.5 : 0;
    for (const [i, note] of notes.entries()) {
      const tick = (ticks[i] ?? 0) - shift * ticksPerBeat;
      const inBar = tick % (beatsPerBar * ticksPerBeat);
      const long = Math.min(2, ((note.offset - note.onset) * grid.tempo) / 60);
      if (inBar === 0) score += 0.25 * long;
      const chord = harmony(tick / ticksPerBeat);
      if (chord !== null) score += (chord.has(note.midi % 12) ? 1 : 0) * 0.5 * long * (inBar === 0 ? 2 : 1);
    }
    if (score > best.score) best = { score, shift };
  }
  return best.shift;
}

/** The same grid counted from another beat. */
export function shiftGrid(grid: Grid, beats: number): Grid {
  return {
    ...grid,
    offset: beatToSeconds(grid, beats),
    anchors: grid.anchors.map((a) => ({ beat: a.beat - beats, seconds: a.seconds })),
  };
}
