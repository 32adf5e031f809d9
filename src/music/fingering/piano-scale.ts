// The standard fingering of a scale or a broken triad, carried over as many octaves as the line has.

import { modulo, present } from '#core';
import { type Pitch, type PitchName, parsePitchName, pitchClass, pitchToMidi } from '../pitch/pitch.ts';
import type { KeyboardFingering } from './fingering.ts';
import { pianoArpeggioTable, pianoScaleTable } from './piano-scale.data.ts';

type Hand = KeyboardFingering['hand'];

/** Whether a key is black. */
export function isBlackKey(midi: number): boolean {
  return [1, 3, 6, 8, 10].includes(modulo(midi, 12));
}

/** Place in the scale by semitones above the tonic; minor in all its forms, its sixth and seventh low or raised. */
const scaleDegrees = {
  major: new Map([0, 2, 4, 5, 7, 9, 11].map((semitones, degree) => [semitones, degree])),
  minor: new Map([
    [0, 0],
    [2, 1],
    [3, 2],
    [5, 3],
    [7, 4],
    [8, 5],
    [9, 5],
    [10, 6],
    [11, 6],
  ]),
} as const;
const triadDegrees = {
  major: new Map([0, 4, 7].map((semitones, degree) => [semitones, degree])),
  minor: new Map([0, 3, 7].map((semitones, degree) => [semitones, degree])),
} as const;
const modes = ['major', 'minor'] as const;
type Mode = (typeof modes)[number];

const keyOf = (name: string): number => pitchClass(present(parsePitchName(name), 'what the table holds'));

/** One octave's fingers up, tonic to tonic; all twelve keys of both modes are in the table. */
function scaleRow(tonic: PitchName, mode: Mode, hand: Hand): readonly number[] {
  const row = pianoScaleTable.find((r) => r.mode === mode && keyOf(r.tonic) === pitchClass(tonic));
  return [...present(row, 'a row for every key')[hand]].map(Number);
}

function arpeggioRow(root: PitchName, mode: Mode, hand: Hand): readonly number[] {
  const row = pianoArpeggioTable.find(
    (r) => r.quality === mode && r.roots.split(' ').some((name) => keyOf(name) === pitchClass(root)),
  );
  return [...present(row, 'a row for every key')[hand]].map(Number);
}

/**
 * Spreads one octave's fingers over a line that goes up and down by neighbouring degrees from one tonic to another; null when
 * it does anything else. Inside, a tonic is taken as the octave repeats: by the finger that goes on.
 */
function spread(
  row: readonly number[],
  degrees: ReadonlyMap<number, number>,
  pitches: readonly Pitch[],
  hand: Hand,
): readonly number[] | null {
  const size = row.length - 1;
  const keys = pitches.map(pitchToMidi);
  const lowest = Math.min(...keys);
  const highest = Math.max(...keys);
  const places = keys.map((key) => {
    const degree = degrees.get((key - lowest) % 12);
    return degree === undefined ? null : degree + size * Math.floor((key - lowest) / 12);
  });
  const runs = places.every((place, i) => {
    const before = places[i - 1];
    return place !== null && (before === undefined || before === null || Math.abs(place - before) === 1);
  });
  const ends = [keys[0], keys.at(-1), highest].every((key) => ((key ?? 0) - lowest) % 12 === 0);
  if (!runs || !ends || highest - lowest < 12) return null;
  // The right hand turns over to go on up and may end on another finger; the left starts as it likes and then repeats.
  const inside = hand === 'right' ? row[0] : row[size];
  return places.map((place, i) => {
    if (keys[i] === lowest) return row[0] ?? 1;
    if (keys[i] === highest) return row[size] ?? 1;
    const degree = (place ?? 0) % size;
    return (degree === 0 ? inside : row[degree]) ?? 1;
  });
}

function scaleFingers(
  tonic: PitchName,
  mode: Mode,
  pitches: readonly Pitch[],
  hand: Hand,
): readonly number[] | null {
  const fingers = spread(scaleRow(tonic, mode, hand), scaleDegrees[mode], pitches, hand);
  // The rows are of the harmonic form: where another puts the thumb on black, no row holds.
  const fits = fingers?.every((finger, i) => {
    const pitch = pitches[i];
    return finger !== 1 || pitch === undefined || !isBlackKey(pitchToMidi(pitch));
  });
  return fits === true ? (fingers ?? null) : null;
}

function arpeggioFingers(
  root: PitchName,
  mode: Mode,
  pitches: readonly Pitch[],
  hand: Hand,
): readonly number[] | null {
  const row = arpeggioRow(root, mode, hand);
  const fingers = spread(row, triadDegrees[mode], pitches, hand);
  // A right hand that starts on a black key begins with the second finger, nearer the thumb, then repeats with the fourth.
  const lowest = Math.min(...pitches.map(pitchToMidi));
  const startsWithSecond = hand === 'right' && row[0] === 4;
  return (
    fingers?.map((finger, i) => {
      const pitch = pitches[i];
      return startsWithSecond && pitch !== undefined && pitchToMidi(pitch) === lowest ? 2 : finger;
    }) ?? null
  );
}

/**
 * The third finger on black, the thumb on white, the second where two white keys lie together (right hand: F and C; left: E
 * and B), from memory of scale manuals; null when the line does not go by semitones over at least a fifth.
 */
function chromaticFingers(pitches: readonly Pitch[], hand: Hand): readonly number[] | null {
  const keys = pitches.map(pitchToMidi);
  const goesBySemitones = keys.every((key, i) => i === 0 || Math.abs(key - (keys[i - 1] ?? 0)) === 1);
  const lowest = Math.min(...keys);
  if (!goesBySemitones || Math.max(...keys) - lowest < 7) return null;
  const second = hand === 'right' ? [0, 5] : [4, 11];
  return keys.map((key) => {
    if (isBlackKey(key)) return 3;
    // From its lowest note the right hand starts with the thumb.
    return second.includes(key % 12) && !(hand === 'right' && key === lowest) ? 2 : 1;
  });
}

/**
 * The manual's fingers for a line that goes through a major or minor scale, or through a major or minor triad, from tonic
 * to tonic over whole octaves, or by semitones, up, down or both; null when the line is anything else. C major, right → 1 2 3 1 2 3 4 5
 */
export function pianoManualFingers(pitches: readonly Pitch[], hand: Hand): readonly number[] | null {
  const [tonic] = pitches;
  if (tonic === undefined) return null;
  const chromatic = chromaticFingers(pitches, hand);
  if (chromatic !== null) return chromatic;
  for (const mode of modes) {
    const fingers = scaleFingers(tonic, mode, pitches, hand) ?? arpeggioFingers(tonic, mode, pitches, hand);
    if (fingers !== null) return fingers;
  }
  return null;
}
