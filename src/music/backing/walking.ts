// A walking bar: from a root, one note on each beat, to the root that comes next. Of all ways over notes of the chord and
// its scale the one that moves best: mostly steps, chord tones on the strong beats, no note twice, and before the goal a
// semitone above or below it, a step of the scale, or its fifth. Common practice, no source.

import { present } from '#core';
import { suggestScales } from '../chord/chord-scale.ts';
import { pitchClass } from '../pitch/pitch.ts';
import { spellScale } from '../scale/scale.ts';
import { type BassPlace, bassCompass, inBassCompass } from './bass-place.ts';
import { nearestMidi, toneClasses } from './chord-sound.ts';

/** What an interval costs a walking line, by semitones; a note struck again stalls it. */
const leapCost = [5, 0, 0, 0.5, 0.6, 0.9, 2.5, 1.3, 3, 3, 4, 5, 2.2] as const;
const costOf = (from: number, to: number): number => leapCost[Math.abs(to - from)] ?? 6;

interface Candidate {
  readonly midi: number;
  readonly cost: number;
}

/** Notes that lead into a goal, the plainest first. */
export function leadingNotes({ chord, goal, root, random }: BassPlace): readonly Candidate[] {
  const scale = scaleClasses(chord);
  const tones = toneClasses(chord);
  if (goal === null) {
    const fifth = tones[2] ?? tones[1] ?? tones[0] ?? 0;
    return [{ midi: inBassCompass(nearestMidi(fifth, root)), cost: 0 }];
  }
  const isIn = (midi: number) => scale.has(midi % 12);
  const steps = [goal + 2, goal - 2].filter(isIn).map((midi) => ({ midi, cost: 0.3 }));
  const fifths = [goal + 7, goal - 5].map((midi) => ({ midi, cost: 0.9 }));
  return [{ midi: goal - 1, cost: 0.1 }, { midi: goal + 1, cost: 0.3 }, ...steps, ...fifths]
    .filter(({ midi }) => midi >= bassCompass.low && midi <= bassCompass.high)
    .map(({ midi, cost }) => ({ midi, cost: cost + random.next() * 0.9 }));
}

/** One note into the goal from another. */
export function leadFrom(place: BassPlace, from: number): number {
  const options = leadingNotes(place).map(({ midi, cost }) => ({ midi, cost: cost + costOf(from, midi) }));
  return present(options.toSorted((a, b) => a.cost - b.cost)[0], 'a goal within the compass can be led into')
    .midi;
}

/** The notes of `beats` beats, the root first. */
export function walkingNotes(place: BassPlace, beats: number): readonly number[] {
  if (beats < 2) return [place.root];
  const { root, goal, random, chord } = place;
  const scale = scaleClasses(chord);
  const tones = new Set(toneClasses(chord));
  const inner: readonly (readonly Candidate[])[] = Array.from({ length: beats - 2 }, (_, nth) => {
    const isStrong = (nth + 1) % 2 === 0;
    const candidates: Candidate[] = [];
    for (let midi = bassCompass.low; midi <= bassCompass.high; midi++) {
      const isTone = tones.has(midi % 12);
      if (!isTone && !scale.has(midi % 12)) continue;
      const high = midi > 47 ? 0.4 : 0;
      const foreign = isTone ? 0 : isStrong ? 1.6 : 0.3;
      candidates.push({ midi, cost: high + foreign + random.next() * 1.6 });
    }
    return candidates;
  });
  const steps = [...inner, leadingNotes(place)];
  let best: { cost: number; line: readonly number[] } = { cost: Number.POSITIVE_INFINITY, line: [] };
  const search = (nth: number, line: readonly number[], cost: number) => {
    if (cost >= best.cost) return;
    const last = line.at(-1) ?? root;
    const before = line.at(-2);
    const candidates = steps[nth];
    if (candidates === undefined) {
      const total = cost + (goal === null ? 0 : costOf(last, goal));
      if (total < best.cost) best = { cost: total, line };
      return;
    }
    for (const { midi, cost: own } of candidates) {
      // A line that turns on every beat goes nowhere; one that comes straight back to its note less still.
      const turns = before !== undefined && (last - before) * (midi - last) < 0 ? 0.35 : 0;
      const returns = before === midi ? 0.9 : 0;
      search(nth + 1, [...line, midi], cost + own + turns + returns + costOf(last, midi));
    }
  };
  search(0, [root], 0);
  return best.line;
}

const classesByChord = new WeakMap<BassPlace['chord'], ReadonlySet<number>>();

/** Pitch classes of the chord and of the plainest scale that goes with it. */
function scaleClasses(chord: BassPlace['chord']): ReadonlySet<number> {
  const known = classesByChord.get(chord);
  if (known !== undefined) return known;
  const [scale] = suggestScales(chord.quality.id);
  const classes = new Set([
    ...toneClasses(chord),
    ...(scale === undefined ? [] : spellScale(chord.root, scale).map(pitchClass)),
  ]);
  classesByChord.set(chord, classes);
  return classes;
}
