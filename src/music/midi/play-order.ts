// The bars of a score in the order they are played, each with when it starts, how fast and with what feel.

import { unfoldRepeats } from '../chart/chart.ts';
import { type Fraction, plus, zero } from '../fraction/fraction.ts';
import { barOffsets } from '../score/bar-places.ts';
import type { Score, ScoreBar, SwingMark } from '../score/score.ts';
import { crotchetsPerMinute } from '../score/tempo.ts';

export interface PlayedBar {
  readonly bar: ScoreBar;
  /** Its place in the score's list of bars, from 0. */
  readonly index: number;
  /** Semibreves from the beginning. */
  readonly start: Fraction;
  /** How far into its metre it starts. */
  readonly offset: Fraction;
  /** Crotchets in a minute. */
  readonly tempo: number;
  /** null where quavers are even. */
  readonly swing: SwingMark | null;
}

/** What holds until a tempo is marked: the Standard MIDI File's own. */
const unmarkedTempo = 120;

/** Repeats unfolded. Tempo and feel are those that hold where a bar is written, also after going back. */
export function playOrder(score: Score): readonly PlayedBar[] {
  const offsets = barOffsets(score.bars);
  let tempo = unmarkedTempo;
  let swing: SwingMark | null = null;
  const written = score.bars.map((bar, index) => {
    if (bar.tempo !== null) tempo = crotchetsPerMinute(bar.tempo);
    if (bar.swing !== null) swing = bar.swing.long === bar.swing.short ? null : bar.swing;
    const { repeatStart, repeatEnd, ending } = bar;
    return { repeatStart, repeatEnd, ending, bar, index, tempo, swing, offset: offsets[index] ?? zero };
  });
  let start = zero;
  return unfoldRepeats(written).map(({ bar, index, tempo, swing, offset }) => {
    const played = { bar, index, start, offset, tempo, swing };
    start = plus(start, bar.length);
    return played;
  });
}
