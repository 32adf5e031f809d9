// How the bars of a sheet and of the chart that is played under it go together.

import type { Chart } from '../chart/chart.ts';
import type { ScoreBar } from '../score/score.ts';
import { barsOfUpbeat } from './score-backing.ts';

/** Bars of the sheet are counted from 1 with its upbeat, as its drawing counts them. */
export interface SheetPlaces {
  /**
   * The sheet's bar that sounds, from the bar of the chart and how many bars have been played; null where it has none.
   * `firstOfLoop` is where on the sheet the bars that go round begin, where they were chosen there.
   */
  sounding(written: number, nth: number, loop: BarsOfChart | null): number | null;
  /** The chart's bars under some of the sheet's; null where they do not lie together. */
  toChart(first: number, last: number): BarsOfChart | null;
  readonly count: number;
  readonly upbeat: number;
}

/** Bars of the chart, both included, and where on the sheet they were chosen; null for on the chart. */
export interface BarsOfChart {
  readonly first: number;
  readonly last: number;
  readonly onSheet: number | null;
}

/** For a score over a chart that is as long, or that goes round under it. */
export function sheetPlaces(bars: readonly ScoreBar[], chart: Chart): SheetPlaces {
  const upbeat = barsOfUpbeat(bars);
  const own = bars.length - upbeat;
  const round = chart.bars.length;
  return {
    count: bars.length,
    upbeat,
    sounding(written, nth, loop) {
      if (written < 1 || own === 0) return null;
      if (own === round) return upbeat + written;
      if (loop === null) return upbeat + 1 + (nth % own);
      const from = loop.onSheet ?? upbeat + loop.first;
      const at = from + (nth % (loop.last - loop.first + 1));
      return at > upbeat + own ? null : at;
    },
    toChart(first, last) {
      const [low, high] = [Math.max(1, first - upbeat), Math.max(1, last - upbeat)];
      const start = (low - 1) % round;
      if (start + high - low >= round) return null;
      return { first: start + 1, last: start + high - low + 1, onSheet: upbeat + low };
    },
  };
}
