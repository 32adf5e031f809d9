// One place in a bass line: the chord, the root under it, and what it leads to.

import type { Random } from '#core';
import type { Chord } from '../chord/chord.ts';

/** The lowest and highest note of a bass line: from the open low string, E, to the D almost two octaves above. */
export const bassCompass = { low: 28, high: 50 } as const;

export interface LineNote {
  /** Ticks after the chord's start; below 0 where the note comes before its chord. */
  readonly at: number;
  readonly ticks: number;
  readonly midi: number;
  /** 0 soft to 1 strong. */
  readonly accent: number;
}

/** What a bass figure needs to know at one chord. */
export interface BassPlace {
  readonly chord: Chord;
  readonly ticks: number;
  readonly beat: number;
  readonly offBeat: number;
  /** The root, or the bass of a slash chord, as it is played. */
  readonly root: number;
  /** The root of what comes next, as it will be played; null before a rest or the end. */
  readonly goal: number | null;
  /** Whether a chord stands right before, so that this one may be played early. */
  readonly isLedInto: boolean;
  /** Whether it begins within a bar. */
  readonly isMidBar: boolean;
  /** 0 calm to 1 busy. */
  readonly intensity: number;
  readonly random: Random;
}

/** The same note in another octave where it lies outside the compass. */
export function inBassCompass(midi: number): number {
  let note = midi;
  while (note < bassCompass.low) note += 12;
  while (note > bassCompass.high) note -= 12;
  return note;
}
