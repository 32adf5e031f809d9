// One way to stop a string, as fretted and bowed instruments both need it, and what it costs (common practice, no source).

import type { Stage } from '#core';
import { type Instrument, openStrings } from '../instrument/instrument.ts';
import { pitchToMidi, type SoundingPitch } from '../pitch/pitch.ts';
import type { StringFingering } from './fingering.ts';

/** A {@link StringFingering} and where exactly the hand lies, which its position's name may leave open. */
export interface StringPlace extends StringFingering {
  /** Semitones from the open string to the first finger (violin and viola: letter steps). */
  readonly hand: number;
}

interface OpenString {
  readonly pitch: SoundingPitch;
  readonly string: number;
  /** Semitones from the open string up to the note; negative when it lies below. */
  readonly stop: number;
}

/** Each string with how far up it the note lies, the highest string first, and the note not below it. */
export function stringsBelow(instrument: Instrument, pitch: SoundingPitch): readonly OpenString[] {
  const open = openStrings(instrument);
  return open
    .map((string, i) => ({
      pitch: string,
      string: open.length - i,
      stop: pitchToMidi(pitch) - pitchToMidi(string),
    }))
    .filter(({ stop }) => stop >= 0)
    .toReversed();
}

/** Whether a student of this stage stretches out of the hand's frame. */
export function stretches(stage: Stage): boolean {
  return stage === 'intermediate' || stage === 'advanced';
}

/** What one place costs by itself: low positions, open strings in them, strong fingers and a quiet hand are cheap. */
export function placeCost(place: StringPlace, stage: Stage): number {
  const early = stage === 'beginner' || stage === 'elementary';
  // First position is home; half position is a step from it.
  const away = place.position < 1 ? 1 : place.position - 1;
  let cost = away * (early || place.kind === 'bowed' ? 0.35 : 0.12);
  // An open string rings on and cannot be shaped: welcome to beginners and in first position, less further up; a bow
  // player who has a fourth finger prefers it.
  if (place.finger === 0 && !early) cost += 0.15 * away + (place.kind === 'bowed' ? 0.4 : 0);
  if (place.finger === 4) cost += early ? 0.8 : 0.3;
  if (place.finger === 'thumb') cost += 0.6;
  if (place.stretch) cost += early ? 4 : 1.6;
  // High up a thick string the tone is dull.
  if (place.string > 1 && place.stop > 9) cost += 0.25 * (place.stop - 9);
  return cost;
}

/** What going from one place to the next costs: a shift most, less while an open string sounds or along a guiding finger. */
export function moveCost(from: StringPlace, to: StringPlace): number {
  const crossing = Math.abs(from.string - to.string);
  let cost = crossing <= 1 ? 0.25 * crossing : 0.6 * crossing;
  const distance = Math.abs(from.hand - to.hand);
  const open = from.finger === 0 || to.finger === 0;
  if (distance > 0) {
    cost += open ? 1.5 + 0.15 * distance : 3 + 0.3 * distance;
    if (!open && crossing === 0 && from.finger === to.finger) cost -= 0.6;
  } else if (!open && from.finger === to.finger && (crossing > 0 || from.stop !== to.stop)) {
    // The same finger again in one position: rolled across strings, slid by a semitone, or drawn in from a stretch.
    cost += from.stop === to.stop ? 0.8 : from.stretch || to.stretch ? 2.4 : 1.2;
  }
  return cost;
}
