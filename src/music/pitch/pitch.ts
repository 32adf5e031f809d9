// A pitch is its spelling: letter, alteration, octave. Key number and frequency are read off it, never the other way.

import { modulo, present } from '#core';

export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

/** A note name without octave; `alter` is the sharps (positive) or flats (negative). */
export interface PitchName {
  readonly letter: Letter;
  readonly alter: number;
}

/** A note name in an octave of scientific pitch notation: C4 is middle C. */
export interface Pitch extends PitchName {
  readonly octave: number;
}

/** A pitch as the player reads it. Only an instrument turns it into a {@link SoundingPitch}. */
export type WrittenPitch = Pitch & { readonly space: 'written' };
/** A pitch as it is heard. Only an instrument turns it into a {@link WrittenPitch}. */
export type SoundingPitch = Pitch & { readonly space: 'sounding' };

export const letters: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
const semitonesByLetter: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const fifthsByLetter: Readonly<Record<Letter, number>> = { F: -1, C: 0, G: 1, D: 2, A: 3, E: 4, B: 5 };
const lettersByFifths: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** 0 for C to 6 for B. */
export function letterIndex(letter: Letter): number {
  return letters.indexOf(letter);
}

/** Key number with middle C = 60; spelling decides the octave, so `Cb4` is 59 and `B#3` is 60. */
export function pitchToMidi(pitch: Pitch): number {
  return 12 * (pitch.octave + 1) + semitonesByLetter[pitch.letter] + pitch.alter;
}

/** Semitones above C, 0 to 11, of a name. */
export function pitchClass(name: PitchName): number {
  return modulo(semitonesByLetter[name.letter] + name.alter, 12);
}

/** Hertz in twelve-tone equal temperament; ISO 16 puts A4 (69) at 440 Hz. */
export function midiToFrequency(midi: number, a4 = 440): number {
  return a4 * 2 ** ((midi - 69) / 12);
}

/** The way back, as a fractional key number. 440 Hz → 69 */
export function frequencyToMidi(hertz: number, a4 = 440): number {
  return 69 + 12 * Math.log2(hertz / a4);
}

/** Letter steps above C0: what a pitch's place on the staff hangs on. `staffStep(C4)` → 28 */
export function staffStep(pitch: Pitch): number {
  return 7 * pitch.octave + letterIndex(pitch.letter);
}

/** Place on the line of fifths: C 0, G 1, F -1, F sharp 6, B flat -2. */
export function nameToFifths(name: PitchName): number {
  return fifthsByLetter[name.letter] + 7 * name.alter;
}

/** The name at a place on the line of fifths. `fifthsToName(-2)` → B flat */
export function fifthsToName(fifths: number): PitchName {
  const index = modulo(fifths + 1, 7);
  return {
    letter: present(lettersByFifths[index], 'a letter for every step'),
    alter: Math.floor((fifths + 1) / 7),
  };
}

const accidentals: Readonly<Record<string, number>> = { '': 0, '#': 1, '##': 2, x: 2, b: -1, bb: -2 };

/** Reads `C`, `F#`, `Bb`, `F##`, `B♭`; null when it is not a note name. */
export function parsePitchName(text: string): PitchName | null {
  const match = /^([A-Ga-g])(##?|bb?|x|)$/.exec(text.replaceAll('♭', 'b').replaceAll('♯', '#'));
  if (match === null) return null;
  const letter = letters.find((l) => l === match[1]?.toUpperCase());
  const alter = accidentals[match[2] ?? ''];
  return letter === undefined || alter === undefined ? null : { letter, alter };
}

/** Reads `C4`, `F#3`, `Bb-1`; null when it is not a pitch. */
export function parsePitch(text: string): Pitch | null {
  const match = /^(.*?)(-?\d)$/.exec(text);
  const name = match === null ? null : parsePitchName(match[1] ?? '');
  return name === null || match === null ? null : { ...name, octave: Number(match[2]) };
}

/** `Bb`, `F##`: letters with b and #, as typed. */
export function formatPitchName(name: PitchName): string {
  return name.letter + (name.alter < 0 ? 'b' : '#').repeat(Math.abs(name.alter));
}

/** `Bb3` */
export function formatPitch(pitch: Pitch): string {
  return formatPitchName(pitch) + pitch.octave;
}

/** Calls a pitch written: for what is composed on the staff itself. */
export function written(pitch: Pitch): WrittenPitch {
  return { letter: pitch.letter, alter: pitch.alter, octave: pitch.octave, space: 'written' };
}

/** Calls a pitch sounding: for open strings, harmonics and whatever is measured by ear. */
export function sounding(pitch: Pitch): SoundingPitch {
  return { letter: pitch.letter, alter: pitch.alter, octave: pitch.octave, space: 'sounding' };
}
