// MusicXML counts time in divisions of a crotchet: the fewest that make every duration and place of a part whole.

import { assert } from '#core';
import { type Fraction, fraction, lcm, times } from '../fraction/fraction.ts';
import type { Part, ScoreBar } from '../score/score.ts';

const crotchets = fraction(4);

/** Divisions of a crotchet for a part. With quavers and triplet quavers → 6 */
export function divisionsOf(part: Part, bars: readonly ScoreBar[]): number {
  let divisions = 1;
  const include = (time: Fraction) => {
    divisions = lcm(divisions, times(time, crotchets).d);
  };
  for (const bar of bars) include(bar.length);
  for (const bar of part.bars) {
    for (const voice of bar.voices) for (const event of voice.events) include(event.duration);
    for (const { at } of bar.chords) include(at);
    for (const { at } of bar.directions) include(at);
  }
  return divisions;
}

/** A time in divisions. */
export function toDivisions(time: Fraction, divisions: number): number {
  const count = times(time, fraction(4 * divisions));
  assert(count.d === 1, 'divisions make every time whole');
  return count.n;
}
