// The rhythm of a line over chords: running values, now and then a longer one, and every few bars a long note and a rest
// to breathe in. Bar patterns are those of studies for winds (common practice, no source).

import { present, type Random } from '#core';
import type { Metre } from '../../rhythm/metre.ts';
import type { ChordSpan } from '../chart/chord-timeline.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { type Beat, barTicks, beatGrid } from '../rhythm/beat-grid.ts';

export interface LineRhythm {
  readonly slots: readonly Slot[];
  /** For each sounding slot, an earlier one whose movement it takes up; empty for none at all. */
  readonly models: readonly (number | null)[];
  /** The same for movement it keeps away from. */
  readonly contrasts: readonly (number | null)[];
}

export type LineValue = 'minim' | 'crotchet' | 'quaver';

/** A beat's values; minims are dealt with by the bar. */
export function beatValues(beat: Beat, value: LineValue): readonly number[] {
  if (value === 'quaver') return Array.from({ length: beat.length / 24 }, () => 24);
  return beat.kind === 'compound' ? [48, 24] : [48];
}

export function slotsFrom(lengths: readonly number[], at: number, isRest = false): readonly Slot[] {
  let start = at;
  return lengths.map((length) => {
    const slot = { at: start, length, isRest, tuplet: null };
    start += length;
    return slot;
  });
}

/** A bar of running values; with `isVaried` one beat is held. */
function runningBar(
  random: Random,
  grid: readonly Beat[],
  value: LineValue,
  isVaried: boolean,
): readonly Slot[] {
  if (value === 'minim') {
    const mains = grid.filter((beat) => beat.isMain).map(({ at }) => at);
    const last = present(grid.at(-1), 'a bar has beats');
    const ends = [...mains.slice(1), last.at + last.length];
    return slotsFrom(
      mains.map((at, i) => (ends[i] ?? at) - at),
      0,
    );
  }
  const held = isVaried ? Math.floor(random.next() * grid.length) : -1;
  return grid.flatMap((beat, i) => slotsFrom(i === held ? [beat.length] : beatValues(beat, value), beat.at));
}

/** A bar that ends a phrase: running to its last main division, a long note there, and a rest after it. */
function endingBar(
  random: Random,
  grid: readonly Beat[],
  value: LineValue,
  isFinal: boolean,
): readonly Slot[] {
  const last = present(grid.at(-1), 'a bar has beats');
  const end = last.at + last.length;
  const mains = grid.flatMap((beat, i) => (beat.isMain && i > 0 ? [i] : []));
  const split = isFinal ? 0 : (mains.at(-1) ?? 0);
  const at = present(grid[split], 'a beat').at;
  const before = grid
    .slice(0, split)
    .flatMap((beat) => slotsFrom(value === 'minim' ? [beat.length] : beatValues(beat, value), beat.at));
  const merged = value === 'minim' && split > 0 ? slotsFrom([at], 0) : before;
  const breathes = end - at > last.length && (!isFinal || random.next() < 0.5);
  const held = slotsFrom([breathes ? last.at - at : end - at], at);
  return [...merged, ...held, ...(breathes ? slotsFrom([last.length], last.at, true) : [])];
}

/** A line of some bars; `phrase` is how many go on one breath. */
export function lineRhythm(
  random: Random,
  metre: Metre,
  bars: number,
  value: LineValue,
  phrase: number,
): readonly Slot[] {
  const grid = beatGrid(metre);
  const length = barTicks(metre);
  return Array.from({ length: bars }, (_, bar) => {
    const isFinal = bar === bars - 1;
    const isEnd = isFinal || (bar + 1) % phrase === 0;
    const slots = isEnd
      ? endingBar(random, grid, value, isFinal)
      : runningBar(random, grid, value, value !== 'minim' && random.next() < 0.3);
    return slots.map((slot) => ({ ...slot, at: slot.at + bar * length }));
  }).flat();
}

/** Notes held over a change of chord from some ticks on are struck again with it. */
export function strikeAgain(
  { slots, models, contrasts }: LineRhythm,
  spans: readonly ChordSpan[],
  from: number,
): LineRhythm {
  const borders = spans.map((span) => span.from).filter((at) => at > from);
  const cut = slots.flatMap((slot): readonly Slot[] => {
    const end = slot.at + slot.length;
    const inside = borders.filter((at) => at > slot.at && at < end);
    if (slot.isRest || slot.tuplet !== null || slot.at < from || inside.length === 0) return [slot];
    const starts = [slot.at, ...inside];
    return starts.map((at, i) => ({ ...slot, at, length: (starts[i + 1] ?? end) - at }));
  });
  const more = cut.length - slots.length;
  return {
    slots: cut,
    contrasts,
    models: models.length === 0 ? models : [...models, ...Array.from({ length: more }, () => null)],
  };
}
