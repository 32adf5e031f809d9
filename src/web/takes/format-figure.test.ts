import { expect, test } from 'vitest';
import { formatFigure, formatLength, midiName } from './format-figure.ts';

test.each([
  [{ value: 0.613, uncertainty: 0.04, unit: 'share' }, '61 ± 4 %'],
  [{ value: 0.613, uncertainty: 0.004, unit: 'share' }, '61.3 ± 0.4 %'],
  [{ value: 12.34, uncertainty: 3.2, unit: 'cents' }, '12 ± 3 cents'],
  [{ value: -8.26, uncertainty: 0.5, unit: 'ms' }, '-8.3 ± 0.5 ms'],
  [{ value: 4, uncertainty: 0, unit: 'count' }, '4'],
  [{ value: 4, uncertainty: 0.25, unit: 'count' }, '4'],
  [{ value: 1.845, uncertainty: 0.12, unit: 'bits' }, '1.85 ± 0.12 bits'],
] as const)('%o reads %s', (figure, text) => {
  expect(formatFigure(figure, 'en-GB').replaceAll('\u00a0', ' ')).toBe(text);
});

test('a difference says its direction', () => {
  expect(formatFigure({ value: 3, uncertainty: 1, unit: 'count' }, 'en-GB', true)).toBe('+3 ± 1');
});

test('lengths and pitches', () => {
  expect(formatLength(75.4)).toBe('1:15');
  // Scientific pitch notation: middle C is C4 and MIDI 60 (ISO 16 gives A4 = 440 Hz, MIDI 69).
  expect([60, 69, 21].map(midiName)).toEqual(['C4', 'A4', 'A0']);
});
