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

/** How well a key fits: chord tones inside it, with weight on the last and first chord as its tonic. */
function keyFit(key: Key, fifths: number, chords: readonly Chord[]): number {
  const inside = (name: PitchName) => {
    const steps = nameToFifths(name) - fifths;
    return steps >= -1 && steps <= 5;
  };
  let score = -Math.abs(fifths) / 100 - (key.mode === 'minor' ? 0.02 : 0);
  for (const chord of chords) score += chordTones(chord).filter(inside).length / chord.quality.tones.length;
  // A turnaround ends on the dominant of where it goes back to: then the first chord is the last one heard.
  const [first, last] = [chords[0], chords.at(-1)];
  const turnsAround =
    first !== undefined &&
    last?.quality.degrees.includes('b7') === true &&
    last.quality.degrees.includes('3') &&
    (pitchClass(last.root) - pitchClass(first.root) + 12) % 12 === 7;
  const ends: readonly (readonly [Chord | undefined, number])[] = [
    [turnsAround ? first : last, 2],
    [first, 1],
  ];
  for (const [chord, weight] of ends) {
    if (chord === undefined || pitchClass(chord.root) !== pitchClass(key.tonic)) continue;
    const isMinor = chord.quality.degrees.includes('b3') && !chord.quality.degrees.includes('b5');
    const isMajor = chord.quality.degrees.includes('3') && !chord.quality.degrees.includes('b7');
    if (key.mode === 'minor' ? isMinor : isMajor) score += weight;
    else if (key.mode === 'major' && !isMinor) score += weight / 2; // a blues ends on its dominant seventh
  }
  return score;
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
