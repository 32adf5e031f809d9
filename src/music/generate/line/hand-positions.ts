// Where a pianist's hand can lie for a whole line in the first year: five neighbouring keys, a finger on each.

import { chordTones } from '../../chord/chord.ts';
import { isInOnePosition } from '../../fingering/finger-line.ts';
import type { WrittenRange } from '../../instrument/instrument.ts';
import { type Key, keyFifths, signatureAlters } from '../../key/key.ts';
import { letters, pitchClass, pitchToMidi, staffStep, type WrittenPitch } from '../../pitch/pitch.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import type { ChordSpan } from '../chart/chord-timeline.ts';
import { ladder } from '../sheet/ladder.ts';

export interface HandPosition {
  readonly range: WrittenRange;
  /** Key numbers under the fingers. */
  readonly among: ReadonlySet<number>;
}

/**
 * The positions a beginner's line may be held to, the best first: all roots of the chords under the hand, and near the
 * tonic (common practice, no source). Empty for everybody else.
 */
export function handPositions(
  { instrument, stage }: SheetFor,
  key: Key,
  spans: readonly ChordSpan[],
  range: WrittenRange,
): readonly HandPosition[] {
  if (instrument.id !== 'piano' || stage !== 'beginner') return [];
  const alters = signatureAlters(keyFifths(key));
  const rungs = ladder(
    letters.map((letter) => ({ letter, alter: alters[letter] })),
    range,
  ).map(({ pitch }) => pitch);
  const tonic = rungs.find((pitch) => pitchClass(pitch) === pitchClass(key.tonic));
  const chords = spans.flatMap(({ chord }) => (chord === null ? [] : [chord]));
  return rungs
    .flatMap((low, i) => {
      const five = rungs.slice(i, i + 5);
      const high = five[4];
      if (high === undefined || !isInOnePosition(instrument.id, five, stage)) return [];
      const classes = new Set(five.map(pitchClass));
      if (!chords.every((chord) => chordTones(chord).some((tone) => classes.has(pitchClass(tone)))))
        return [];
      const missing = chords.filter(({ root }) => !classes.has(pitchClass(root))).length;
      return [{ low, high, five, cost: (4 * missing) / chords.length + 0.3 * stepsBetween(low, tonic) }];
    })
    .sort((a, b) => a.cost - b.cost)
    .map(({ low, high, five }) => ({ range: { low, high }, among: new Set(five.map(pitchToMidi)) }));
}

const stepsBetween = (a: WrittenPitch, b: WrittenPitch | undefined): number =>
  b === undefined ? 0 : Math.abs(staffStep(a) - staffStep(b));
