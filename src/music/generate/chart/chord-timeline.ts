// Which chord sounds when, in ticks, and the scale that goes with it in its key.

import { present } from '#core';
import type { ChartBar } from '../../chart/chart.ts';
import type { Chord } from '../../chord/chord.ts';
import { suggestScales } from '../../chord/chord-scale.ts';
import type { ChordQualityId } from '../../chord/quality.ts';
import { type Key, keyFifths, signatureAlters } from '../../key/key.ts';
import { type PitchName, pitchClass } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { type ScaleId, spellScale } from '../../scale/scale.ts';
import { barTicks, beatGrid } from '../rhythm/beat-grid.ts';

export interface ChordSpan {
  /** Ticks from the start of the first bar. */
  readonly from: number;
  readonly to: number;
  readonly bar: number;
  /** null is N.C. */
  readonly chord: Chord | null;
  /** Whether the symbol is written: not where the bar repeats the one before. */
  readonly isWritten: boolean;
}

/** Finer places for chords that outnumber the beats: quavers, semiquavers, and so on, in ticks. */
const finerGrids = [24, 12, 6, 3, 1];

/** Where a bar's chords stand: each on its own beat where they can, else on the coarsest places that keep them apart. */
function startsOf(bar: ChartBar, metre: Metre): readonly number[] {
  const length = barTicks(metre);
  const beats = beatGrid(metre).map(({ at }) => at);
  const exact = bar.chords.map(({ at }) => (at.n * length) / at.d);
  const areApart = (starts: readonly number[]) => new Set(starts).size === starts.length;
  const onBeats = exact.map((ticks) => beats.findLast((beat) => beat <= ticks) ?? 0);
  if (areApart(onBeats)) return onBeats;
  const grids = finerGrids.map((grid) => exact.map((ticks) => Math.floor(ticks / grid) * grid));
  return grids.find(areApart) ?? present(grids.at(-1), 'a finest grid');
}

/** The spans of some bars, chords placed on beats: three in a bar of four take one, one and two. */
export function chordTimeline(bars: readonly ChartBar[], metre: Metre): readonly ChordSpan[] {
  const length = barTicks(metre);
  return bars.flatMap((bar, b) => {
    const starts = startsOf(bar, metre);
    const spans = bar.chords.map(({ chord }, i): ChordSpan => {
      const [from, to] = [starts[i] ?? 0, starts[i + 1] ?? length];
      return { from: b * length + from, to: b * length + to, bar: b, chord, isWritten: !bar.isSame };
    });
    return spans.filter(({ from, to }) => to > from);
  });
}

/** The span that sounds at some ticks. */
export function spanAt(spans: readonly ChordSpan[], ticks: number): ChordSpan | undefined {
  return spans.findLast(({ from }) => from <= ticks);
}

const minorSevenths: readonly ChordQualityId[] = ['minor_7', 'minor_9', 'minor_11'];

/**
 * Whether chords move in no key: minor sevenths and nothing else, none leading to the next by fourth or fifth, each of them
 * a place of its own (common practice, no source).
 */
export function isModal(spans: readonly Pick<ChordSpan, 'chord'>[]): boolean {
  const chords = spans.flatMap(({ chord }) => (chord === null ? [] : [chord]));
  return chords.every(({ quality, root }, i) => {
    const next = chords[i + 1]?.root ?? root;
    const away = (pitchClass(next) - pitchClass(root) + 12) % 12;
    return minorSevenths.includes(quality.id) && away !== 5 && away !== 7;
  });
}

/**
 * The scale for a chord: of those suggested, the one with most notes of the key, the plainer one on a tie; where no key
 * rules, the plainest.
 */
export function scaleForChord(
  chord: Chord,
  key: Key | null,
): { readonly id: ScaleId; readonly names: readonly PitchName[] } {
  const [first = 'major'] = suggestScales(chord.quality.id);
  if (key === null) return { id: first, names: spellScale(chord.root, first) };
  const alters = signatureAlters(keyFifths(key));
  const outside = (name: PitchName) => (alters[name.letter] === name.alter ? 0 : 1);
  const options = suggestScales(chord.quality.id)
    .map((id) => ({ id, names: spellScale(chord.root, id) }))
    .filter(({ names }) => names.length === 7);
  const foreign = (names: readonly PitchName[]) => names.reduce((sum, name) => sum + outside(name), 0);
  const best = options.reduce<(typeof options)[number] | null>(
    (a, b) => (a === null || foreign(b.names) < foreign(a.names) ? b : a),
    null,
  );
  // Diminished sevenths have eight notes, augmented sevenths six: their chord tones and key notes are scale enough.
  return best ?? { id: first, names: spellScale(chord.root, first) };
}
