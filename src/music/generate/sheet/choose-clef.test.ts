// What readers expect of clefs: common practice, no source.
import { expect, test } from 'vitest';
import { present } from '#core';
import { parsePitch } from '../../pitch/pitch.ts';
import { clefsOfStretches } from './choose-clef.ts';

const stretch = (text: string, opensBar: boolean) => ({
  pitches: text.split(' ').map((word) => present(parsePitch(word), word)),
  opensBar,
});
const bars = (...texts: readonly string[]) => texts.map((text) => stretch(text, true));

test('a passage stays in its usual clef for a few ledger lines', () => {
  expect(clefsOfStretches(['bass', 'tenor', 'treble'], bars('G3 A3 B3 C4', 'D4 C4 B3 A3'))).toEqual([
    'bass',
    'bass',
  ]);
});

test('it starts low in the usual clef and changes where it climbs', () => {
  expect(
    clefsOfStretches(
      ['bass', 'tenor', 'treble'],
      bars('G2 B2 D3 G3 B3 D4 G4 B4', 'D5 G5 D5 B4 G4 D4 B3 G3', 'D3 B2 G2'),
    ),
  ).toEqual(['bass', 'treble', 'bass']);
});

test('one bar between two of another clef changes nothing', () => {
  expect(clefsOfStretches(['bass', 'tenor'], bars('C3 D3', 'D4 E4', 'C3 D3'))).toEqual([
    'bass',
    'bass',
    'bass',
  ]);
});

test('inside a bar it changes where much is saved', () => {
  const beats = [
    stretch('G2 B2 D3 G3', true),
    stretch('B3 D4 G4 B4', false),
    stretch('D5 G5 D5 B4', true),
    stretch('G4 D4 B3 G3', false),
    stretch('D3', true),
  ];
  const found = clefsOfStretches(['bass', 'tenor', 'treble'], beats);
  expect(found[0]).toBe('bass');
  expect(found[2]).toBe('treble');
  expect(found[4]).toBe('bass');
  expect(new Set(found).size).toBe(2);
});

test('a climb of a few ledger lines does not end in another clef', () => {
  const down = bars('G2 A2 B2 C3', 'G3 A3 B3 C4', 'G4 F4 E4 D4', 'C4 B3 A3 G3', 'C3 B2 A2 G2');
  expect(clefsOfStretches(['bass', 'tenor'], down).at(-1)).toBe('bass');
});
