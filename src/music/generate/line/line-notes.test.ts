// How chromatic notes are spelled: common practice, no source.
import { expect, test } from 'vitest';
import { present } from '#core';
import {
  formatPitch,
  parsePitch,
  parsePitchName,
  pitchToMidi,
  staffStep,
  written,
} from '../../pitch/pitch.ts';
import { chordTonePitch, type LineNote, spellResolutions, usualPitch } from './line-notes.ts';

const pitchOf = (text: string) => written(present(parsePitch(text), text));
const noteOf = (text: string, role: LineNote['role']): LineNote => {
  const pitch = pitchOf(text);
  return { pitch, midi: pitchToMidi(pitch), step: staffStep(pitch), role, isGuide: false, isRoot: false };
};

test.each([
  ['D#5', 'D5', 'Eb5'],
  ['Eb5', 'E5', 'D#5'],
  ['Db5', 'D5', 'C#5'],
  ['A#4', 'A4', 'Bb4'],
  ['F4', 'F#4', 'F4'], // E sharp is no usual name
])('%s on its way to %s is %s', (approach, target, spelled) => {
  const [first] = spellResolutions([noteOf(approach, 'approach'), noteOf(target, 'chord')]);
  expect(formatPitch(present(first, 'a pitch'))).toBe(spelled);
});

test.each([
  ['D#5', 'B', 'D#5'], // third of B7
  ['A#4', 'F#', 'A#4'], // third of F sharp 7
  ['E#5', 'C#', 'E#5'], // third of C sharp 7
  ['E#5', 'D', 'F5'], // sharp ninth of D7alt
])('%s over %s is printed %s', (tone, root, printed) => {
  const name = present(parsePitchName(root), root);
  expect(formatPitch(chordTonePitch(pitchOf(tone), name))).toBe(printed);
});

test('a usual name has no double accidentals and none of C flat, F flat, E sharp and B sharp', () => {
  for (const [odd, usual] of [
    ['Cb5', 'B4'],
    ['E#4', 'F4'],
    ['B#4', 'C5'],
    ['F##4', 'G4'],
  ])
    expect(formatPitch(usualPitch(pitchOf(odd ?? '')))).toBe(usual);
});
