import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import {
  degreeToInterval,
  intervalBetween,
  intervalUp,
  nameAtOrAbove,
  transposeName,
  transposePitch,
} from './interval.ts';
import {
  fifthsToName,
  formatPitch,
  formatPitchName,
  nameToFifths,
  parsePitch,
  parsePitchName,
  pitchClass,
  pitchToMidi,
} from './pitch.ts';

const pitch = (text: string) => present(parsePitch(text), 'what the test names');
const anyPitch = fc
  .record({ fifths: fc.integer({ min: -15, max: 19 }), octave: fc.integer({ min: 0, max: 8 }) })
  .map(({ fifths, octave }) => ({ ...fifthsToName(fifths), octave }));

test('spelling decides the octave', () => {
  expect(['C4', 'Cb4', 'B#3', 'A0', 'C8'].map((t) => pitchToMidi(pitch(t)))).toEqual([60, 59, 60, 21, 108]);
});

test('names and pitches read back as they are written', () => {
  fc.assert(
    fc.property(anyPitch, (p) => {
      expect(parsePitch(formatPitch(p))).toEqual(p);
      expect(fifthsToName(nameToFifths(p))).toEqual({ letter: p.letter, alter: p.alter });
    }),
  );
  expect(parsePitchName('B♭')).toEqual({ letter: 'B', alter: -1 });
  expect(['H', '', 'C###', 'Cb#', '4'].map(parsePitchName)).toEqual([null, null, null, null, null]);
});

test('transposing by the interval between two pitches leads from one to the other', () => {
  fc.assert(
    fc.property(anyPitch, anyPitch, (a, b) => {
      expect(transposePitch(a, intervalBetween(a, b))).toEqual(b);
      expect(transposeName(a, intervalUp(a, b))).toEqual({ letter: b.letter, alter: b.alter });
    }),
  );
});

test('a name is found at or above a floor, less than an octave away', () => {
  fc.assert(
    fc.property(anyPitch, anyPitch, (name, floor) => {
      const found = pitchToMidi(nameAtOrAbove(name, floor)) - pitchToMidi(floor);
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found).toBeLessThan(12);
      expect(pitchClass(name)).toBe((pitchToMidi(floor) + found) % 12);
    }),
  );
});

test('degrees are intervals above the root', () => {
  expect(degreeToInterval('b3')).toEqual({ diatonic: 2, chromatic: 3 });
  expect(degreeToInterval('bb7')).toEqual({ diatonic: 6, chromatic: 9 });
  expect(degreeToInterval('#11')).toEqual({ diatonic: 10, chromatic: 18 });
  expect(formatPitchName(transposeName({ letter: 'D', alter: 1 }, degreeToInterval('7')))).toBe('C##');
});
