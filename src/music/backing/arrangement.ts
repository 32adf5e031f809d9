// What the arranger makes: notes in ticks for each part, with the bars they stand in. Sound, not notation: pitches are
// MIDI numbers at concert pitch.

import type { Chord } from '../chord/chord.ts';

export type PartName = 'bass' | 'keys' | 'drums' | 'click' | 'drone' | 'tune';

/** What the band does in a bar: all of it, only the time, or nothing at all; before it, a tone to tune to and the count. */
export type BarRole = 'tuning' | 'count-in' | 'play' | 'time' | 'free';

export interface ArrangedNote {
  /** Start, from the beginning of the track. */
  readonly tick: number;
  /** Where it stands on the grid; the same as `tick` when nothing is humanised. */
  readonly grid: number;
  readonly ticks: number;
  readonly midi: number;
  /** 1 to 127. */
  readonly velocity: number;
  /** The chord it belongs to, by its index in `Arrangement.chords`; null for drums, click, drone and tune. */
  readonly chord: number | null;
}

/** A chord as it sounds in one chorus, in its key. */
export interface SoundingChord {
  readonly chord: Chord | null;
  readonly tick: number;
  readonly ticks: number;
  /** Index in `Arrangement.bars`. */
  readonly bar: number;
}

export interface ArrangedBar {
  readonly tick: number;
  readonly ticks: number;
  readonly role: BarRole;
  /** From 0; -1 before the first. */
  readonly chorus: number;
  /** The bar's number as written on the chart; 0 before the first. */
  readonly written: number;
  readonly section: string | null;
  /** The last bar of a section or of the chart. */
  readonly endsSection: boolean;
  /** The bar in which the band ends. */
  readonly isLast: boolean;
  /** 0 at first to 1 at the most. */
  readonly intensity: number;
}

export interface ArrangedPart {
  readonly name: PartName;
  /** MIDI channel, 0 to 15; drums and click are on 9. */
  readonly channel: number;
  /** General MIDI program, 0 to 127. */
  readonly program: number;
  /** In order of time. */
  readonly notes: readonly ArrangedNote[];
}

export interface Arrangement {
  readonly ticksPerCrotchet: number;
  /** Crotchets a minute from a tick on. */
  readonly tempos: readonly { readonly tick: number; readonly perMinute: number }[];
  readonly metre: { readonly beats: number; readonly unit: number };
  readonly bars: readonly ArrangedBar[];
  readonly chords: readonly SoundingChord[];
  readonly parts: readonly ArrangedPart[];
  /** Where the track ends, the last notes rung out. */
  readonly end: number;
}

/** A note on its grid. */
export const noteOf = (
  tick: number,
  ticks: number,
  midi: number,
  loud: number,
  chord: number | null,
): ArrangedNote => ({
  tick,
  grid: tick,
  ticks: Math.max(1, ticks),
  midi,
  velocity: loud,
  chord,
});
