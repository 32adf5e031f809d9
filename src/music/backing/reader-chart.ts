// A backing track's chart as somebody reads it: in the key of the chorus that sounds, for their instrument.

import type { Chart } from '../chart/chart.ts';
import { transposeChart } from '../chart/transpose-chart.ts';
import { type Instrument, transpositionOf } from '../instrument/instrument.ts';
import { invertDirection } from '../pitch/interval.ts';
import { type BackingSpec, keyMoveOf } from './backing-spec.ts';
import { keyInterval } from './layout.ts';

/** The chart of a chorus (from 0) at concert pitch: the key may move from one to the next. */
export function chorusChart(spec: BackingSpec, chorus: number): Chart {
  const up = keyMoveOf(spec, Math.max(0, chorus));
  return up === 0 ? spec.chart : transposeChart(spec.chart, keyInterval(up));
}

/** Whether the player of an instrument reads other notes than those that sound; an octave does not count. */
export const readsTransposed = (instrument: Instrument): boolean =>
  transpositionOf(instrument).chromatic % 12 !== 0;

/** A concert chart as the player of an instrument reads it. Dm7 for a trumpet in B flat → Em7 */
export function readerChart(chart: Chart, instrument: Instrument): Chart {
  return readsTransposed(instrument)
    ? transposeChart(chart, invertDirection(transpositionOf(instrument)))
    : chart;
}
