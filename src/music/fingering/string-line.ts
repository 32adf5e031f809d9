// A whole line under the left hand, and whether it lies there without a shift.

import type { Stage } from '#core';
import { type Instrument, writtenToSounding } from '../instrument/instrument.ts';
import type { WrittenPitch } from '../pitch/pitch.ts';
import { bowedPlaces, bowedReach, isBowed } from './bowed.ts';
import type { Fingering, StringFingering } from './fingering.ts';
import { frettedPlaces, frettedReach, isFretted } from './fretted.ts';
import { cheapestPath } from './hand-path.ts';
import { moveCost, placeCost, type StringPlace } from './string-place.ts';

/** Whether an instrument's notes are stopped on strings. */
export function isStopped(instrument: Instrument): boolean {
  return isFretted(instrument) || isBowed(instrument);
}

function places(instrument: Instrument, pitch: WrittenPitch, stage: Stage): readonly StringPlace[] {
  const sounding = writtenToSounding(instrument, pitch);
  return isFretted(instrument)
    ? frettedPlaces(instrument, sounding, stage)
    : bowedPlaces(instrument, sounding, stage);
}

function withoutHand({ hand: _hand, ...fingering }: StringPlace): StringFingering {
  return fingering;
}

/** First position, then half position, then upwards. */
function homeFirst(place: StringPlace): number {
  return place.position < 1 ? 1.25 : place.position;
}

/** All places of one note, first position first, open string before fingers, each string and finger once in its lowest position. */
export function stringFingering(instrument: Instrument, pitch: WrittenPitch, stage: Stage): Fingering | null {
  const seen = new Set<string>();
  const ranked = places(instrument, pitch, stage)
    .toSorted((a, b) => homeFirst(a) - homeFirst(b) || placeCost(a, 'beginner') - placeCost(b, 'beginner'))
    .filter((place) => {
      const key =
        place.finger === 0 ? `${place.string}` : `${place.string} ${place.finger} ${place.position}`;
      return !seen.has(key) && seen.add(key);
    })
    .map(withoutHand);
  const [usual, ...alternates] = ranked;
  return usual === undefined ? null : { usual, alternates };
}

/** More places than this for one note and the dear ones are not worth comparing. */
const mostPlaces = 24;

function likely(all: readonly StringPlace[], stage: Stage): readonly StringPlace[] {
  if (all.length <= mostPlaces) return all;
  return all.toSorted((a, b) => placeCost(a, stage) - placeCost(b, stage)).slice(0, mostPlaces);
}

/** String, finger and position for each note so that the whole costs least; null where a note is not on the instrument. */
export function stringLine(
  instrument: Instrument,
  pitches: readonly WrittenPitch[],
  stage: Stage,
): readonly (StringFingering | null)[] {
  return cheapestPath(
    pitches.map((pitch) => likely(places(instrument, pitch, stage), stage)),
    (place) => placeCost(place, stage),
    moveCost,
  ).map((place) => (place === null ? null : withoutHand(place)));
}

/** The lowest position in which every note lies under the hand without a stretch; null when there is none at this stage. */
export function sharedStringPosition(
  instrument: Instrument,
  pitches: readonly WrittenPitch[],
  stage: Stage,
): number | null {
  const reach = isFretted(instrument) ? frettedReach(instrument, stage) : bowedReach(instrument, stage);
  let common: ReadonlyMap<number, number> | null = null;
  for (const pitch of pitches) {
    const here = new Map<number, number>();
    for (const place of places(instrument, pitch, stage)) {
      if (place.hand <= reach && !place.stretch && (common === null || common.has(place.hand)))
        here.set(place.hand, place.position);
    }
    common = here;
  }
  if (common === null || common.size === 0) return null;
  return common.get(Math.min(...common.keys())) ?? null;
}
