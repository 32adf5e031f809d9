import { describe, expect, test } from 'vitest';
import { fifthsToName, formatPitchName, nameToFifths, pitchClass } from '../pitch/pitch.ts';
import { easiestTonic, listScales, scaleFifths, spellScale } from './scale.ts';

const spell = (tonic: { letter: 'C' | 'E' | 'G'; alter: number }, id: Parameters<typeof spellScale>[1]) =>
  spellScale(tonic, id).map(formatPitchName).join(' ');

test('a scale is spelled from its tonic', () => {
  expect(spell({ letter: 'E', alter: -1 }, 'dorian')).toBe('Eb F Gb Ab Bb C Db');
  expect(spell({ letter: 'G', alter: 1 }, 'harmonic_minor')).toBe('G# A# B C# D# E F##');
});

describe.each(listScales().map((scale) => scale))('$id', (scale) => {
  const practical = Array.from({ length: 15 }, (_, i) => fifthsToName(i - 7));

  test('rises within the octave, and uses each letter once when it has seven notes', () => {
    for (const tonic of practical) {
      const names = spellScale(tonic, scale.id);
      const classes = names.map((name) => (pitchClass(name) - pitchClass(tonic) + 12) % 12);
      expect(classes).toEqual(classes.toSorted((a, b) => a - b));
      expect(new Set(classes).size).toBe(names.length);
      if (names.length === 7) expect(new Set(names.map((n) => n.letter)).size).toBe(7);
    }
  });

  test('its easiest tonic sounds alike and never reads worse', () => {
    for (const tonic of practical) {
      const chosen = easiestTonic(tonic, scale.id);
      expect(pitchClass(chosen)).toBe(pitchClass(tonic));
      const doubles = (t: typeof tonic) =>
        spellScale(t, scale.id).filter((n) => Math.abs(n.alter) > 1).length;
      expect(doubles(chosen)).toBeLessThanOrEqual(doubles(tonic));
      expect(Math.abs(scaleFifths(chosen, scale.id))).toBeLessThanOrEqual(7);
      expect(nameToFifths(easiestTonic(chosen, scale.id))).toBe(nameToFifths(chosen));
    }
  });
});
