// What readers expect of clefs: common practice, no source.
import { expect, test } from 'vitest';
import { present } from '#core';
import { parsePitch } from '../../pitch/pitch.ts';
import { clefsOfBars } from './choose-clef.ts';

const bars = (...texts: readonly string[]) =>
  texts.map((text) => text.split(' ').map((word) => present(parsePitch(word), word)));

test('a passage stays in its usual clef for a few ledger lines', () => {
  expect(clefsOfBars(['bass', 'tenor', 'treble'], bars('G3 A3 B3 C4', 'D4 C4 B3 A3'))).toEqual([
    'bass',
    'bass',
  ]);
});

test('it starts low in the usual clef and changes where it climbs', () => {
  expect(
    clefsOfBars(
      ['bass', 'tenor', 'treble'],
      bars('G2 B2 D3 G3 B3 D4 G4 B4', 'D5 G5 D5 B4 G4 D4 B3 G3', 'D3 B2 G2'),
    ),
  ).toEqual(['bass', 'treble', 'bass']);
});

test('one bar between two of another clef changes nothing', () => {
  expect(clefsOfBars(['bass', 'tenor'], bars('C3 D3', 'D4 E4', 'C3 D3'))).toEqual(['bass', 'bass', 'bass']);
});
