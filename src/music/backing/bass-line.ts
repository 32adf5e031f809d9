// Bass lines: a root (or the bass of a slash chord) for each chord, chosen so that the line stays together and low, and
// between two roots the figure of the feel, which leads from the one into the other. Common practice, no source.

import type { Random } from '#core';
import type { SoundingChord } from './arrangement.ts';
import { bassFigure } from './bass-figures.ts';
import { inBassCompass, type LineNote } from './bass-place.ts';
import { bassClass, nearestMidi } from './chord-sound.ts';
import type { FeelId } from './feel.ts';

const middle = 38;

/** The root nearest to where the line is, drawn towards the middle of the compass. */
const rootFor = (pitchClass: number, from: number) =>
  inBassCompass(nearestMidi(pitchClass, Math.round((2 * from + middle) / 3)));

/** A chord of a stretch, with the tempo's off-beat and how busy the band is there. */
export interface BassChord {
  readonly sounding: SoundingChord;
  readonly offBeat: number;
  readonly intensity: number;
  readonly feel: FeelId;
  readonly isMidBar: boolean;
}

/** A line through the chords of a stretch without a break. `from` is the last note before it, or null. */
export function bassLine(
  chords: readonly BassChord[],
  beat: number,
  from: number | null,
  random: Random,
): readonly (readonly LineNote[])[] {
  let last = from ?? middle;
  let planned: number | null = null;
  return chords.map(({ sounding: { chord, ticks }, offBeat, intensity, feel, isMidBar }, at) => {
    if (chord === null) {
      planned = null;
      return [];
    }
    const next = chords[at + 1]?.sounding.chord ?? null;
    const root = planned ?? rootFor(bassClass(chord), last);
    const goal = next === null ? null : rootFor(bassClass(next), root);
    planned = goal;
    last = root;
    const isLedInto = (chords[at - 1]?.sounding.chord ?? null) !== null;
    return bassFigure(feel, {
      chord,
      ticks,
      beat,
      offBeat,
      root,
      goal,
      isLedInto,
      isMidBar,
      intensity,
      random,
    });
  });
}
