// Chord symbols of a bar.

import { chordSymbol } from '../../score/create-score.ts';
import type { ChordSymbol } from '../../score/score.ts';
import { ticksToFraction } from '../rhythm/beat-figure.ts';
import type { ChordSpan } from './chord-timeline.ts';

/** The symbols written in a bar, at their places; none where the bar repeats the one before. */
export function symbolsOf(
  spans: readonly ChordSpan[],
  bar: number,
  barLength: number,
): readonly ChordSymbol[] {
  return spans
    .filter((span) => span.bar === bar && span.isWritten)
    .map(({ chord, from }) => chordSymbol(chord, ticksToFraction(from - bar * barLength)));
}
