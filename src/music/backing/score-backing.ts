// A band under a sheet: the chart that stands over its notes, played in its metre, tempo and feel.

import type { ChartBar, ChartChord } from '../chart/chart.ts';
import { formatChart } from '../chart/format-chart.ts';
import { transposeChart } from '../chart/transpose-chart.ts';
import { compare, type Fraction, fraction, minus, over, zero } from '../fraction/fraction.ts';
import { transpositionOf } from '../instrument/instrument.ts';
import { pitchClass } from '../pitch/pitch.ts';
import { barLength, formatMetre } from '../rhythm/metre.ts';
import type { Part, PartBar, Score, ScoreBar } from '../score/score.ts';
import { crotchetsPerMinute } from '../score/tempo.ts';
import { type BackingMaterial, backingToSpec, parseBackingMaterial } from './backing-material.ts';
import { bassClass } from './chord-sound.ts';
import { type FeelId, feelById, feelIds, ticksPerCrotchet } from './feel.ts';

/**
 * The band for a score with chord symbols, at concert pitch; null where it has none, or a metre that no feel is in. Bars of
 * the chart are those of the score from its first whole bar on, one for one.
 */
export function scoreToBacking(score: Score): BackingMaterial | null {
  const chords = score.parts.find((part) => part.bars.some((bar) => bar.chords.length > 0));
  const feel = feelOf(score);
  if (chords === undefined || feel === null) return null;
  const bars = chartBars(score.bars, chords);
  const chart = transposeChart({ bars }, transpositionOf(chords.instrument));
  const read = parseBackingMaterial({
    kind: 'backing',
    chart: formatChart(chart),
    feel,
    tempo: tempoOf(score, feel),
    choruses: bars.length <= 4 ? 8 : bars.length <= 16 ? 4 : 2,
    title: score.title === '' ? null : score.title,
  });
  return read.ok ? read.value : null;
}

/** How many of a score's first bars come before the chart's first: notes to look at, and an upbeat. */
export function barsOfUpbeat(bars: readonly ScoreBar[]): number {
  const free = bars.findIndex(({ isFree }) => !isFree);
  const first = bars[free];
  if (first === undefined) return 0;
  return compare(first.length, barLength(first.metre)) < 0 ? free + 1 : free;
}

/** The feel that the sheet names, or what its metre and its swing ask for. */
function feelOf({ bars }: Score): FeelId | null {
  const metres = new Set(bars.filter(({ isFree }) => !isFree).map((bar) => formatMetre(bar.metre)));
  const [metre] = metres;
  if (metres.size !== 1 || metre === undefined) return null;
  const fits = (feel: FeelId) => formatMetre(feelById(feel).metre) === metre;
  const style = bars[0]?.tempo?.text?.toLowerCase() ?? '';
  const named = feelIds.find((feel) => fits(feel) && style.includes(feel));
  if (named !== undefined) return named;
  const swing = bars[0]?.swing;
  if (metre === '4/4') return swing != null && swing.long > swing.short ? 'swing' : 'straight';
  return feelIds.find(fits) ?? null;
}

function tempoOf({ bars }: Score, feel: FeelId): number {
  const mark = bars[0]?.tempo;
  const crotchets = mark == null ? 100 : crotchetsPerMinute(mark);
  const beats = (crotchets * ticksPerCrotchet) / feelById(feel).beatTicks;
  return Math.min(320, Math.max(30, Math.round(beats)));
}

function chartBars(bars: readonly ScoreBar[], { bars: own }: Part): readonly ChartBar[] {
  const from = barsOfUpbeat(bars);
  let held: ChartChord['chord'] = null;
  return bars.slice(from).map((bar, at): ChartBar => {
    const written = own[from + at];
    const symbols = written === undefined ? [] : chordsOf(written, bar, held);
    const before = held;
    held = symbols.at(-1)?.chord ?? null;
    return {
      number: at + 1,
      section: bar.section,
      chords: symbols,
      isSame: at > 0 && (written?.chords.length ?? 0) === 0 && before !== null,
      repeatStart: bar.repeatStart,
      repeatEnd: bar.repeatEnd,
      ending: bar.ending,
    };
  });
}

/** A bar's chords with their shares; what sounded before goes on until the first. */
function chordsOf(
  { chords }: PartBar,
  { metre }: ScoreBar,
  held: ChartChord['chord'],
): readonly ChartChord[] {
  const length = barLength(metre);
  const starts: { readonly at: Fraction; readonly chord: ChartChord['chord'] }[] = chords.map(
    ({ at, chord }) => ({ at: over(at, length), chord }),
  );
  const first = starts[0];
  if (first === undefined || compare(first.at, zero) > 0) starts.unshift({ at: zero, chord: held });
  return starts.map(({ at, chord }, nth) => ({
    at,
    chord,
    share: minus(starts[nth + 1]?.at ?? fraction(1), at),
  }));
}

/** Whether two bands play the same chords bar by bar, in whatever spelling, feel and tempo. */
export function playsSameChords(one: BackingMaterial, other: BackingMaterial): boolean {
  const [mine, theirs] = [one, other].map(chordsByBar);
  return mine !== undefined && theirs !== undefined && mine.join('|') === theirs.join('|');
}

const chordsByBar = (material: BackingMaterial): readonly string[] =>
  backingToSpec(material).chart.bars.map(({ chords, repeatStart, repeatEnd, ending }) =>
    [
      repeatStart,
      repeatEnd,
      ending,
      ...chords.map(({ chord, at }) =>
        chord === null
          ? '-'
          : `${at.n}/${at.d} ${pitchClass(chord.root)} ${chord.quality.id} ${bassClass(chord)}`,
      ),
    ].join(' '),
  );
