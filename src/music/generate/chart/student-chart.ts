// A typed chart in the student's own key.

import { present } from '#core';
import { type Chart, unfoldRepeats } from '../../chart/chart.ts';
import { parseChart } from '../../chart/parse-chart.ts';
import { chartKey, transposeChart } from '../../chart/transpose-chart.ts';
import { type Instrument, transpositionOf } from '../../instrument/instrument.ts';
import { foldFifths, type Key, keyFifths, transposeKey } from '../../key/key.ts';
import { type Interval, intervalFifths, intervalUp, invertDirection } from '../../pitch/interval.ts';
import type { PitchName } from '../../pitch/pitch.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import { comfortableTuneKeys } from '../sheet/student-keys.ts';

export interface StudentChart {
  readonly chart: Chart;
  readonly key: Key;
  /** From the typed chart's pitches to these, octaves as typed to written; for a tune that goes with it. */
  readonly moved: Interval;
}

interface ChartFields {
  readonly chart: string;
  readonly pitch: 'written' | 'concert';
  readonly key: 'as_typed' | 'fit';
}

/** A chart that a spec's reader has already read once. */
function chartOf(text: string): Chart {
  const read = parseChart(text);
  return present(read.ok ? read.value : null, 'a chart that has been read');
}

/** How many bars a chart is, repeats taken. */
export function barsPlayed(text: string): number {
  return unfoldRepeats(chartOf(text).bars).length;
}

/** The interval, spelled so that a key moved by it stays within six sharps or flats. */
function spelledFor(home: Key, interval: Interval): Interval {
  const fifths = keyFifths(home) + intervalFifths(interval);
  const fold = (foldFifths(fifths) - fifths) / 12; // each whole turn of the circle is a diminished second
  return { diatonic: interval.diatonic - fold, chromatic: interval.chromatic };
}

function moveChart(chart: Chart, home: Key, interval: Interval): StudentChart {
  const moved = spelledFor(home, interval);
  return { chart: transposeChart(chart, moved), key: transposeKey(home, moved), moved };
}

/** The chart as typed, for this instrument. */
function asTyped(chart: Chart, home: Key, pitch: ChartFields['pitch'], instrument: Instrument): StudentChart {
  if (pitch === 'written') return { chart, key: home, moved: { diatonic: 0, chromatic: 0 } };
  return moveChart(chart, home, invertDirection(transpositionOf(instrument)));
}

/** The chart on another tonic. */
export function chartOnTonic(text: string, tonic: PitchName): StudentChart {
  const chart = chartOf(text);
  const home = chartKey(chart);
  return moveChart(chart, home, intervalUp(home.tonic, tonic));
}

/** The ways a student may be given the chart, the best first: one as typed, or one for each comfortable key. */
export function studentCharts(fields: ChartFields, student: SheetFor): readonly StudentChart[] {
  const chart = chartOf(fields.chart);
  const home = chartKey(chart);
  if (fields.key === 'as_typed') return [asTyped(chart, home, fields.pitch, student.instrument)];
  return comfortableTuneKeys(student, home.mode).map((key) => {
    const up = intervalUp(home.tonic, key.tonic);
    // Down rather than far up: a tune keeps near where it was typed.
    const interval = up.chromatic > 6 ? { diatonic: up.diatonic - 7, chromatic: up.chromatic - 12 } : up;
    return moveChart(chart, home, interval);
  });
}

/** Whether a chart is spoken in sevenths, as swung styles are (common practice). */
export function hasSevenths(chart: Chart): boolean {
  const chords = chart.bars.flatMap((bar) => bar.chords.map(({ chord }) => chord)).filter((c) => c !== null);
  const sevenths = chords.filter(({ quality }) => quality.degrees.some((d) => d.endsWith('7')));
  return sevenths.length * 2 >= chords.length;
}
