// Places for a note on bowed strings. Violin and viola: a finger for each letter of the scale, so spelling decides (G sharp
// on the D string is a high third finger, A flat a low fourth). Cello: a finger for each semitone, stretched a semitone
// further from 1 to 2; double bass: 1, 2 and 4 a semitone apart (Simandl's positions); both with the thumb high up.
// Common practice, no source.

import type { Stage } from '#core';
import type { Instrument } from '../instrument/instrument.ts';
import { letterIndex, type SoundingPitch } from '../pitch/pitch.ts';
import type { StringFinger } from './fingering.ts';
import { type StringPlace, stretches, stringsBelow } from './string-place.ts';

type Taken = readonly [finger: StringFinger, above: number, stretch?: 'stretch'];

interface Board {
  /** How far up the first finger goes by stage: letter steps on violin and viola, semitones on the others. */
  readonly highestHand: Readonly<Record<Stage, number>>;
  readonly hands: number;
  /** Position by name, from where the first finger is. */
  readonly name: (hand: number) => number;
  /** Fingers and how many semitones they lie above the first; null: by letters. */
  readonly frame: ((hand: number) => readonly Taken[]) | null;
}

const violin: Board = {
  highestHand: { beginner: 1, elementary: 1, intermediate: 3, advanced: 12 },
  hands: 15,
  name: (hand) => hand,
  frame: null,
};

const thumbFrame: readonly Taken[] = [
  ['thumb', -2],
  [1, 0],
  [2, 1],
  [2, 2],
  [3, 3],
];
const thumbFrom = 14;
const celloNames = [0.5, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6, 7];
const cello: Board = {
  highestHand: { beginner: 2, elementary: 7, intermediate: 10, advanced: 22 },
  hands: 24,
  name: (hand) => celloNames[hand - 1] ?? hand - 5,
  frame: (hand) => {
    if (hand >= thumbFrom) return thumbFrame;
    if (hand > 7) {
      return [
        [1, 0],
        [2, 1],
        [2, 2],
        [3, 2],
        [3, 3],
      ];
    }
    return [
      [1, 0],
      [2, 1],
      [3, 2],
      [4, 3],
      [1, -1, 'stretch'],
      [2, 2, 'stretch'],
      [3, 3, 'stretch'],
      [4, 4, 'stretch'],
    ];
  },
};
const bassNames = [0.5, 1, 2, 2.5, 3, 3.5, 4, 5, 5.5, 6, 6.5, 7];
const doubleBass: Board = {
  highestHand: { beginner: 2, elementary: 5, intermediate: 9, advanced: 22 },
  hands: 24,
  name: (hand) => bassNames[hand - 1] ?? hand - 5,
  frame: (hand) => {
    if (hand >= thumbFrom) return thumbFrame;
    return [
      [1, 0],
      [2, 1],
      [hand > 9 ? 3 : 4, 2],
    ];
  },
};

const boardsById: Readonly<Record<string, Board>> = { violin, viola: violin, cello, double_bass: doubleBass };

/** Whether notes are found on this instrument by strings without frets. */
export function isBowed(instrument: Instrument): boolean {
  return boardsById[instrument.id] !== undefined;
}

/** How far up the first finger of a student of this stage goes; 0 when the instrument is not bowed. */
export function bowedReach(instrument: Instrument, stage: Stage): number {
  return boardsById[instrument.id]?.highestHand[stage] ?? 0;
}

/** Letter steps that a number of semitones can be, the plain reading first: 6 is an augmented fourth or diminished fifth. */
const stepsBySemitones: readonly (readonly number[])[] = [
  [0],
  [1],
  [1],
  [2],
  [2],
  [3],
  [3, 4],
  [4],
  [5, 4],
  [5],
  [6],
  [6],
];

/** Letter steps from the open string to the note, a far-fetched spelling (E sharp, D sharp on the D string) read plainly. */
function stepsAbove(open: SoundingPitch, pitch: SoundingPitch, stop: number): number {
  const octaves = Math.floor(stop / 12);
  const plain = stepsBySemitones[stop - 12 * octaves] ?? [0];
  const spelled = (letterIndex(pitch.letter) - letterIndex(open.letter) + 7) % 7;
  return 7 * octaves + (plain.includes(spelled) ? spelled : (plain[0] ?? 0));
}

const fingersByStep: readonly StringFinger[] = [1, 2, 3, 4];

function takenByLetter(hand: number, step: number, stop: number): readonly Taken[] {
  const finger = fingersByStep[step - hand];
  if (finger !== undefined) return [[finger, 0]];
  // The fourth finger stretched one letter further, as to C on the E string in first position.
  return step - hand === 4 && stop % 12 === 8 ? [[4, 0, 'stretch']] : [];
}

function placesUpTo(board: Board, instrument: Instrument, pitch: SoundingPitch, highest: number) {
  const places: StringPlace[] = [];
  const strings = stringsBelow(instrument, pitch);
  for (let hand = 1; hand <= highest; hand++) {
    for (const { string, stop, pitch: open } of strings) {
      const base = { kind: 'bowed', string, stop, hand, position: board.name(hand) } as const;
      if (stop === 0) {
        places.push({ ...base, finger: 0, stretch: false });
        continue;
      }
      const taken =
        board.frame === null
          ? takenByLetter(hand, stepsAbove(open, pitch, stop), stop)
          : board.frame(hand).filter(([, above]) => hand + above === stop);
      for (const [finger, , stretch] of taken)
        places.push({ ...base, finger, stretch: stretch !== undefined });
    }
  }
  return places;
}

/**
 * Places a student of this stage takes a note in, the lowest position first. Where the stage's positions do not reach, the
 * lowest that does, and a stretch from those; empty when the note lies below the lowest string or past the fingerboard.
 */
export function bowedPlaces(
  instrument: Instrument,
  pitch: SoundingPitch,
  stage: Stage,
): readonly StringPlace[] {
  const board = boardsById[instrument.id];
  if (board === undefined) return [];
  const within = placesUpTo(board, instrument, pitch, board.highestHand[stage]);
  const still = within.filter((place) => !place.stretch);
  if (stretches(stage) && within.length > 0) return within;
  if (still.length > 0) return still;
  // A stretch where the hand lies, or the lowest position that needs none: the line around it decides.
  const beyond = placesUpTo(board, instrument, pitch, board.hands).filter((place) => !place.stretch);
  return [...within, ...beyond.filter((place) => place.hand === beyond[0]?.hand)];
}
