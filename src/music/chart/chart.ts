// A chord chart: bars of chords with sections, repeats and endings.

import type { Chord } from '../chord/chord.ts';
import type { Fraction } from '../fraction/fraction.ts';

/** A chord and its part of the bar; `chord` is null for N.C. (no chord). */
export interface ChartChord {
  readonly chord: Chord | null;
  /** Where it starts, as a share of the bar: 0, 1/2, … */
  readonly at: Fraction;
  /** How much of the bar it holds. */
  readonly share: Fraction;
}

export interface ChartBar {
  /** Bar number from 1, as written (repeats are not counted twice). */
  readonly number: number;
  /** The name of the section that starts here. */
  readonly section: string | null;
  readonly chords: readonly ChartChord[];
  /** Written `%`: the same as the bar before. */
  readonly isSame: boolean;
  readonly repeatStart: boolean;
  readonly repeatEnd: boolean;
  /** Number of the ending that starts here. */
  readonly ending: number | null;
}

export interface Chart {
  readonly bars: readonly ChartBar[];
}

/** What unfolding reads of a bar, in a chart or a score. */
export interface RepeatMarks {
  readonly repeatStart: boolean;
  readonly repeatEnd: boolean;
  readonly ending: number | null;
}

/**
 * Bars in the order they are played: each repeat taken once, or once for each of its endings. A closing sign without an
 * opening one leads back to where the last repeat ended, or to the start. `|: A | 1. B :| 2. C |` → A B A C
 */
export function unfoldRepeats<Bar extends RepeatMarks>(bars: readonly Bar[]): readonly Bar[] {
  const played: Bar[] = [];
  let back = 0;
  let pass = 1;
  for (let at = 0; at < bars.length; ) {
    const bar = bars[at];
    if (bar === undefined) break;
    if (bar.repeatStart && at !== back) [back, pass] = [at, 1];
    if (bar.ending !== null && bar.ending < pass) {
      const own = bars.findIndex((later, i) => i > at && later.ending === pass);
      if (own >= 0) {
        at = own;
        continue;
      }
    }
    played.push(bar);
    at++;
    if (!bar.repeatEnd) continue;
    if (pass < passesFrom(bars, back)) {
      pass++;
      at = back;
    } else [back, pass] = [at, 1];
  }
  return played;
}

/** How often the stretch from an opening sign to the next one is played. */
function passesFrom(bars: readonly RepeatMarks[], back: number): number {
  const next = bars.findIndex((bar, i) => i > back && bar.repeatStart);
  const stretch = bars.slice(back, next < 0 ? bars.length : next);
  return Math.max(2, ...stretch.map((bar) => bar.ending ?? 0));
}
