// Some bars of a chart round and round: a track of its own, so that the band leads from the last bar back into the first.

import type { Arrangement } from './arrangement.ts';
import type { BackingSpec } from './backing-spec.ts';

/** Times round with other figures before they begin again. */
const rounds = 4;

/**
 * The spec for bars `first` to `last`, as numbered on the chart; repeats inside are taken as they stand. It has one chorus
 * more than `loopTicks` goes round. A band that changes its tempo does not go round for ever: it plays as often as it may.
 */
export function loopSpec(spec: BackingSpec, first: number, last: number): BackingSpec {
  const bars = spec.chart.bars
    .filter((bar) => bar.number >= first && bar.number <= last)
    .map((bar) => ({ ...bar, repeatStart: false, repeatEnd: false, ending: null }));
  if (spec.tempoStep !== null) return { ...spec, chart: { bars }, choruses: 64 };
  const whole = Math.max(1, spec.keys.length);
  const choruses = whole * Math.max(1, Math.round(rounds / whole)) + 1;
  return { ...spec, chart: { bars }, choruses };
}

/** From where to where such a track goes round, in ticks; null where it does not. */
export function loopTicks(
  spec: BackingSpec,
  { bars }: Arrangement,
): { readonly from: number; readonly to: number } | null {
  if (spec.tempoStep !== null) return null;
  const from = bars.find((bar) => bar.chorus === 0)?.tick;
  const to = bars.find((bar) => bar.chorus === spec.choruses - 1)?.tick;
  return from === undefined || to === undefined || to <= from ? null : { from, to };
}
