// The distance between two spellings: letter steps and semitones, each with its sign.

import { assert, modulo, present } from '#core';
import {
  fifthsToName,
  letterIndex,
  letters,
  nameToFifths,
  type Pitch,
  type PitchName,
  pitchToMidi,
  staffStep,
} from './pitch.ts';

/** `diatonic` letter steps and `chromatic` semitones: a minor third up is 2 and 3, a major second down -1 and -2. */
export interface Interval {
  readonly diatonic: number;
  readonly chromatic: number;
}

const majorScale = [0, 2, 4, 5, 7, 9, 11];

/** Semitones of the major or perfect interval this many letter steps up. */
function plainSemitones(steps: number): number {
  return 12 * Math.floor(steps / 7) + present(majorScale[modulo(steps, 7)], 'a letter for every step');
}

/** Reads a scale degree as the interval above the root: `b3` → minor third, `#11` → augmented eleventh. */
export function degreeToInterval(degree: string): Interval {
  const match = /^(b{0,2}|#{0,2})(\d{1,2})$/.exec(degree);
  assert(match !== null, `no degree: ${degree}`);
  const marks = match[1] ?? '';
  const diatonic = Number(match[2]) - 1;
  const alter = marks.startsWith('b') ? -marks.length : marks.length;
  return { diatonic, chromatic: plainSemitones(diatonic) + alter };
}

/** The interval the other way. */
export function invertDirection(interval: Interval): Interval {
  return { diatonic: -interval.diatonic, chromatic: -interval.chromatic };
}

/** The pitch an interval away, spelled by letter steps. Minor third above `A3` → `C4` */
export function transposePitch(pitch: Pitch, interval: Interval): Pitch {
  const step = staffStep(pitch) + interval.diatonic;
  const octave = Math.floor(step / 7);
  const plain = { letter: present(letters[step - 7 * octave], 'a letter for every step'), alter: 0, octave };
  return { ...plain, alter: pitchToMidi(pitch) + interval.chromatic - pitchToMidi(plain) };
}

/** Steps on the line of fifths that an interval makes. Major second up → 2 */
export function intervalFifths(interval: Interval): number {
  return 7 * interval.chromatic - 12 * interval.diatonic;
}

/** The name an interval away. Major third above `E` → `G#` */
export function transposeName(name: PitchName, interval: Interval): PitchName {
  return fifthsToName(nameToFifths(name) + intervalFifths(interval));
}

/** From one pitch to another: letter steps and semitones. */
export function intervalBetween(from: Pitch, to: Pitch): Interval {
  return { diatonic: staffStep(to) - staffStep(from), chromatic: pitchToMidi(to) - pitchToMidi(from) };
}

/** The smallest interval up from one name to another. `F` to `Bb` → perfect fourth */
export function intervalUp(from: PitchName, to: PitchName): Interval {
  const diatonic = (letterIndex(to.letter) - letterIndex(from.letter) + 7) % 7;
  const low = { ...from, octave: 4 };
  const octave = 4 + (letterIndex(to.letter) < letterIndex(from.letter) ? 1 : 0);
  return { diatonic, chromatic: pitchToMidi({ ...to, octave }) - pitchToMidi(low) };
}

/** The pitch of this name at or next above `floor`. First `Bb` from `C4` up → `Bb4` */
export function nameAtOrAbove(name: PitchName, floor: Pitch): Pitch {
  const wanted = pitchToMidi(floor);
  let octave = floor.octave - 1;
  while (pitchToMidi({ ...name, octave }) < wanted) octave++;
  return { ...name, octave };
}
