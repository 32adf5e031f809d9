import { expect, test } from 'vitest';
import { parseChart } from '#music';
import { nextSection, type Tap, tapChart } from './tap-chart.ts';

const root = (name: string): Tap => ({ kind: 'root', name });
const quality = (suffix: string): Tap => ({ kind: 'quality', suffix });
const sign = (text: string): Tap => ({ kind: 'sign', sign: text });
const bass: Tap = { kind: 'bass' };
const back: Tap = { kind: 'back' };
const tapped = (...taps: readonly Tap[]) =>
  taps.reduce((now, tap) => tapChart(now, tap), { text: '', at: 0 }).text.trim();

test('a turnaround is tapped from nothing, and is a chart after each chord', () => {
  const taps = [
    root('D'),
    quality('m7'),
    root('G'),
    quality('7'),
    sign('|'),
    root('C'),
    quality('maj7'),
    sign('|'),
  ];
  expect(tapped(...taps)).toBe('| Dm7 G7 | Cmaj7 |');
  for (let count = 1; count <= taps.length; count++)
    expect(parseChart(tapped(...taps.slice(0, count))).ok, tapped(...taps.slice(0, count))).toBe(true);
});

test('another quality takes the place of the one before, and the bass stays', () => {
  expect(tapped(root('Bb'), quality('m'), quality('7'))).toBe('| Bb7');
  expect(tapped(root('C'), bass, root('E'), quality('m7'))).toBe('| Cm7/E');
});

test('repeats, endings and sections are signs', () => {
  const text = tapped(
    sign('[A]'),
    sign('|:'),
    root('C'),
    sign('|'),
    sign('1.'),
    root('F'),
    sign(':|'),
    sign('2.'),
    root('C'),
    sign('|'),
  );
  expect(text).toBe('[A] |: C | 1. F :| 2. C |');
  expect(parseChart(text).ok).toBe(true);
});

test('back takes away one sign or chord at a time', () => {
  expect(tapped(root('C'), quality('maj7'), sign('|'), back)).toBe('| Cmaj7');
  expect(tapped(root('C'), quality('maj7'), sign('|'), back, back)).toBe('|');
  expect(tapped(back)).toBe('');
});

test('in the middle of a chart the rest stays', () => {
  const text = '| C | F |';
  const at = '| C'.length;
  expect(tapChart({ text, at }, quality('maj7')).text).toBe('| Cmaj7 | F |');
  expect(tapChart({ text, at }, root('G')).text).toBe('| C G | F |');
  expect(tapChart({ text, at }, back).text).toBe('| | F |');
});

test('a quality without a chord before it does nothing', () => {
  expect(tapChart({ text: '| ', at: 2 }, quality('m7')).text).toBe('| ');
});

test('sections go on from the last letter', () => {
  expect(['', '[A] C', '[A] C [B] F', '[Z] C'].map(nextSection)).toEqual(['A', 'B', 'C', 'Z']);
});
