// Where bars stand: how far into the metre a short bar starts, and which bars an ending spans.

import { compare, type Fraction, minus, zero } from '../fraction/fraction.ts';
import { barLength } from '../rhythm/metre.ts';
import type { ScoreBar } from './score.ts';

function missing(bar: ScoreBar): Fraction {
  return minus(barLength(bar.metre), bar.length);
}

/**
 * How far into its metre each bar starts. A pickup (bar 0), and a short bar that completes a short one just before it,
 * end where a full bar ends; every other bar starts at 0. A crotchet pickup in 3/4 → 1/2
 */
export function barOffsets(bars: readonly ScoreBar[]): readonly Fraction[] {
  let before: Fraction = zero; // how much of its metre the short bar before filled, if it began a bar
  return bars.map((bar) => {
    const gap = missing(bar);
    const completes = before.n > 0 && compare(before, gap) === 0;
    const offset = gap.n > 0 && (bar.number === 0 || completes) ? gap : zero;
    before = gap.n > 0 && offset.n === 0 ? bar.length : zero;
    return offset;
  });
}

/** An ending over bars `first` to `last` (places in the list, not printed numbers). */
export interface EndingSpan {
  readonly number: number;
  readonly first: number;
  readonly last: number;
  /** Whether a repeat sign closes it; the last ending usually stays open. */
  readonly isClosed: boolean;
}

/**
 * Which bars each ending spans: up to its repeat sign, the next ending, the next section or repeat, or the end. An open
 * ending is drawn no longer than the ending before it.
 */
export function endingSpans(bars: readonly ScoreBar[]): readonly EndingSpan[] {
  const spans: EndingSpan[] = [];
  bars.forEach((bar, first) => {
    if (bar.ending === null) return;
    let last = first;
    while (last < bars.length - 1 && bars[last]?.repeatEnd === false) {
      const next = bars[last + 1];
      if (next === undefined || next.ending !== null || next.section !== null || next.repeatStart) break;
      last++;
    }
    const isClosed = bars[last]?.repeatEnd === true;
    const before = spans.at(-1);
    if (!isClosed && before !== undefined) last = Math.min(last, first + before.last - before.first);
    spans.push({ number: bar.ending, first, last, isClosed });
  });
  return spans;
}
