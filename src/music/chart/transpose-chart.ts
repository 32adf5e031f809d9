// Moves a chart to another key, spelled so that it reads well, and finds the key it stands in.

import { type Chord, chordTones, transposeChord } from '../chord/chord.ts';
import { fifthsToKey, foldFifths, type Key } from '../key/key.ts';
import { type Interval, intervalFifths } from '../pitch/interval.ts';
import { fifthsToName, nameToFifths, type PitchName, pitchClass } from '../pitch/pitch.ts';
import type { Chart } from './chart.ts';

/** The same note under a usual name: no E♯, B♯, F♭ or double accidentals. */
function usualName(name: PitchName): PitchName {
  const fifths = nameToFifths(name);
  if (fifths > 10) return fifthsToName(fifths - 12);
  return fifths < -7 ? fifthsToName(fifths + 12) : name;
}

/** The chord with a usual root and bass. */
function withUsualNames(chord: Chord): Chord {
  return { ...chord, root: usualName(chord.root), bass: chord.bass === null ? null : usualName(chord.bass) };
}

/** The chart with every chord changed by a function. */
function mapChords(chart: Chart, change: (chord: Chord) => Chord): Chart {
  const bars = chart.bars.map((bar) => ({
    ...bar,
    chords: bar.chords.map((held) => ({ ...held, chord: held.chord === null ? null : change(held.chord) })),
  }));
  return { bars };
}

/** The chart an interval away, its key kept within six sharps or flats. Octaves do not matter. */
export function transposeChart(chart: Chart, interval: Interval): Chart {
  const home = chartKey(chart);
  const fifths = nameToFifths(home.tonic) - (home.mode === 'minor' ? 3 : 0) + intervalFifths(interval);
  const fold = (foldFifths(fifths) - fifths) / 12; // whole turns of the circle: each is a diminished second
  const moved = { diatonic: interval.diatonic - fold, chromatic: interval.chromatic };
  return mapChords(chart, (chord) => withUsualNames(transposeChord(chord, moved)));
}

const has = (chord: Chord, degree: string): boolean => chord.quality.degrees.includes(degree);
const isMinorChord = (chord: Chord): boolean => has(chord, 'b3') && !has(chord, 'b5');
const isDominant = (chord: Chord): boolean => has(chord, '3') && has(chord, 'b7');
const isRestful = (chord: Chord): boolean => has(chord, '3') && !has(chord, 'b7');

/** Whether one chord's root is the fifth above another's. */
const isFifthAbove = (upper: PitchName, lower: PitchName): boolean =>
  (pitchClass(upper) - pitchClass(lower) + 12) % 12 === 7;

/** How much a chord of the tonic says for a key: a blues ends on its dominant seventh. */
function tonicWeight(chord: Chord, key: Key): number {
  if (pitchClass(chord.root) !== pitchClass(key.tonic)) return 0;
  if (key.mode === 'minor') return isMinorChord(chord) ? 1 : 0;
  if (isRestful(chord)) return 1;
  return isMinorChord(chord) ? 0 : 1 / 2;
}

/** Whether a chord is a minor seventh on its way to the dominant a fourth up: the second step of a key, not its first. */
const isSupertonic = (chord: Chord, next: Chord | undefined): boolean =>
  next !== undefined &&
  isMinorChord(chord) &&
  has(chord, 'b7') &&
  isDominant(next) &&
  isFifthAbove(chord.root, next.root);

/**
 * How well the ends fit. A last chord led to by its dominant counts most, the first one next. A chart that goes round may
 * stop on its dominant; then the chord it leads back to is home, the first one or another of the chart.
 */
function endFit(key: Key, chords: readonly Chord[]): number {
  const [first, last] = [chords[0], chords.at(-1)];
  if (first === undefined || last === undefined) return 0;
  const begins = isSupertonic(first, chords[1]) ? 0 : tonicWeight(first, key);
  // Minor sevenths alone lead nowhere: the first place is home.
  const isModal = chords.every((chord) => isMinorChord(chord) && has(chord, 'b7'));
  const leads = has(last, '3') && !has(last, '7');
  const goesBack = leads && isFifthAbove(last.root, first.root) && !isSupertonic(first, chords[1]);
  if (isModal || goesBack) return 3 * begins;
  const before = chords.findLast(({ root }) => pitchClass(root) !== pitchClass(last.root));
  const isReached =
    pitchClass(first.root) === pitchClass(last.root) ||
    (before !== undefined &&
      isFifthAbove(before.root, last.root) &&
      (isDominant(before) || before !== first));
  const ends = (isReached ? 2 : 1) * tonicWeight(last, key) + begins;
  if (!leads || !isFifthAbove(last.root, key.tonic)) return ends;
  const homes = chords.filter(({ root }) => pitchClass(root) === pitchClass(key.tonic));
  const isHome = (chord: Chord) =>
    !isDominant(chord) &&
    tonicWeight(chord, key) > 0 &&
    !isSupertonic(chord, chords[chords.indexOf(chord) + 1]);
  if (homes.some(isHome)) return ends + 1.5;
  const waits = homes.length === 0 && isDominant(last) && pitchClass(first.root) !== pitchClass(last.root);
  return waits ? ends + 1 : ends;
}

/** A dominant seventh that goes home by a fifth. */
const isCadence = (from: Chord, to: Chord): boolean =>
  isDominant(from) && !isDominant(to) && isFifthAbove(from.root, to.root);

/** How well a key fits: chord tones inside it, triads foreign to it, and how the chart begins and ends. */
function keyFit(key: Key, fifths: number, chords: readonly Chord[]): number {
  const isInside = (name: PitchName, most: number) => {
    const steps = nameToFifths(name) - fifths;
    return (steps >= -1 && steps <= 5) || steps === most;
  };
  // A minor key has its leading note too, eight fifths up.
  const leading = key.mode === 'minor' ? 8 : 5;
  let score = -Math.abs(fifths) / 100 - (key.mode === 'minor' ? 0.02 : 0);
  for (const chord of chords) {
    const tones = chordTones(chord);
    score += tones.filter((name) => isInside(name, 5)).length / tones.length;
    const triad = tones.filter((_, i) => /^[b#]?[135]$/.test(chord.quality.degrees[i] ?? ''));
    if (!triad.every((name) => isInside(name, leading))) score -= 1;
  }
  const isReached = chords.some((chord, i) => {
    const before = chords[i - 1];
    const arrives = before !== undefined && isCadence(before, chord) && tonicWeight(chord, key) > 0;
    return arrives && !isSupertonic(chord, chords[i + 1]);
  });
  return score + endFit(key, chords) + (isReached ? 1 : 0);
}

/** The key a chart stands in, as well as chords can tell (common practice: its tones, its last and first chord). */
export function chartKey(chart: Chart): Key {
  const chords = chart.bars.flatMap((bar) =>
    bar.chords.flatMap(({ chord }) => (chord === null ? [] : [chord])),
  );
  let best = fifthsToKey(0, 'major');
  let bestFit = Number.NEGATIVE_INFINITY;
  for (let fifths = -7; fifths <= 7; fifths++) {
    for (const mode of ['major', 'minor'] as const) {
      const key = fifthsToKey(fifths, mode);
      const found = keyFit(key, fifths, chords);
      if (found > bestFit) [best, bestFit] = [key, found];
    }
  }
  return best;
}
