// Places for a note on guitar, bass guitar and ukulele: string and fret from the tuning, one finger for each fret from the
// hand's position, a fret's stretch at either end for those who are far enough (common practice, no source).

import type { Stage } from '#core';
import type { Instrument } from '../instrument/instrument.ts';
import type { SoundingPitch } from '../pitch/pitch.ts';
import type { StringFinger } from './fingering.ts';
import { type StringPlace, stretches, stringsBelow } from './string-place.ts';

interface Neck {
  readonly frets: number;
  readonly highestPosition: Readonly<Record<Stage, number>>;
}

const necksById: Readonly<Record<string, Neck>> = {
  guitar: { frets: 19, highestPosition: { beginner: 1, elementary: 5, intermediate: 9, advanced: 16 } },
  bass_guitar: { frets: 20, highestPosition: { beginner: 2, elementary: 5, intermediate: 9, advanced: 17 } },
  // The beginner's D on the A string is the fifth fret.
  ukulele: { frets: 12, highestPosition: { beginner: 2, elementary: 3, intermediate: 7, advanced: 9 } },
};

/** Whether notes are found on this instrument by strings and frets. */
export function isFretted(instrument: Instrument): boolean {
  return necksById[instrument.id] !== undefined;
}

/** The highest position a student of this stage plays in; 0 without frets. */
export function frettedReach(instrument: Instrument, stage: Stage): number {
  return necksById[instrument.id]?.highestPosition[stage] ?? 0;
}

function fingerAt(fret: number, position: number): { finger: StringFinger; stretch: boolean } | null {
  switch (fret - position) {
    case -1:
      return { finger: 1, stretch: true };
    case 0:
      return { finger: 1, stretch: false };
    case 1:
      return { finger: 2, stretch: false };
    case 2:
      return { finger: 3, stretch: false };
    case 3:
      return { finger: 4, stretch: false };
    case 4:
      return { finger: 4, stretch: true };
    default:
      return null;
  }
}

/** All places up to the end of the neck, open strings in every position; `highest` counts positions. */
function placesUpTo(neck: Neck, instrument: Instrument, pitch: SoundingPitch, highest: number) {
  const places: StringPlace[] = [];
  const strings = stringsBelow(instrument, pitch);
  for (let position = 1; position <= highest; position++) {
    for (const { string, stop } of strings) {
      if (stop > neck.frets) continue;
      const taken = stop === 0 ? ({ finger: 0, stretch: false } as const) : fingerAt(stop, position);
      if (taken === null) continue;
      places.push({ kind: 'fretted', string, stop, position, hand: position, ...taken });
    }
  }
  return places;
}

/**
 * Places a student of this stage takes a note in, the lowest position first. Where the stage's positions do not reach, the
 * lowest that does; empty when the note is not on the instrument.
 */
export function frettedPlaces(
  instrument: Instrument,
  pitch: SoundingPitch,
  stage: Stage,
): readonly StringPlace[] {
  const neck = necksById[instrument.id];
  if (neck === undefined) return [];
  const within = placesUpTo(neck, instrument, pitch, neck.highestPosition[stage]);
  const usable = stretches(stage) ? within : within.filter((place) => !place.stretch);
  if (usable.length > 0) return usable;
  const anywhere = placesUpTo(neck, instrument, pitch, neck.frets).filter((place) => !place.stretch);
  return anywhere.filter((place) => place.position === anywhere[0]?.position);
}
