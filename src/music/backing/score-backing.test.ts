import { expect, test } from 'vitest';
import { parseChart } from '../chart/parse-chart.ts';
import { createSheet } from '../generate/create-sheet.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { parseMaterialSpec } from '../spec/material-spec.ts';
import { scoreToBacking } from './score-backing.ts';
import { sheetPlaces } from './sheet-places.ts';

function scoreOf(spec: unknown, id: string) {
  const read = parseMaterialSpec(spec);
  const instrument = findInstrument(id);
  if (!read.ok || instrument === null) throw new Error(read.ok ? id : read.error.message);
  const sheet = createSheet(read.value, { instrument, stage: 'intermediate', age: null, seed: 1 });
  if (!sheet.ok) throw new Error(sheet.error.message);
  return sheet.value.score;
}
const chart = (text: string) => {
  const read = parseChart(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};

test('a chart sheet for a saxophone gives its band the concert chords, its repeats and sections', () => {
  const typed = '[A] |: Dm7 | G7 % | 1. Cmaj7 | A7 :| 2. C |';
  const spec = { kind: 'chart', chart: typed, pitch: 'concert', feel: 'swing', tempo: 132 };
  const band = scoreToBacking(scoreOf(spec, 'alto_sax'));
  expect(band).toMatchObject({ feel: 'swing', tempo: 132 });
  expect(band?.chart.replaceAll('\n', ' ')).toBe('[A] |: Dm7 | G7 | 1. Cmaj7 | A7 :| 2. C |');
});

test('the metre chooses the feel, and its beat the tempo', () => {
  const sheet = (metre: string) => scoreOf({ kind: 'chart', chart: '| C | G7 |', metre, tempo: 60 }, 'flute');
  expect(scoreToBacking(sheet('3/4'))).toMatchObject({ feel: 'waltz', tempo: 60 });
  expect(scoreToBacking(sheet('6/8'))?.feel).toBe('six-eight');
  expect(scoreToBacking(sheet('5/4'))).toBeNull();
});

test('the style that a chart names is played', () => {
  const sheet = scoreOf({ kind: 'chart', chart: '| Am7 | D7 |', style: 'bossa' }, 'flute');
  expect(scoreToBacking(sheet)?.feel).toBe('bossa');
});

test('a sheet without chord symbols has no band', () => {
  expect(scoreToBacking(scoreOf({ kind: 'rhythm' }, 'flute'))).toBeNull();
});

test('a line over a chart is as long as its band', () => {
  const score = scoreOf(
    { kind: 'line', chart: '| Dm7 | G7 | C | % |', content: 'guide_tones' },
    'trumpet_bb',
  );
  const band = scoreToBacking(score);
  expect(band).not.toBeNull();
  expect(chart(band?.chart ?? '').bars.length).toBe(score.bars.length);
});

const bars = (count: number) => scoreOf({ kind: 'chart', chart: '| C '.repeat(count) }, 'flute').bars;

test('a sheet as long as its chart goes along bar by bar, repeats and all', () => {
  const places = sheetPlaces(bars(4), chart('| C | F | G7 | C |'));
  expect([1, 2, 3, 4, 1].map((written, nth) => places.sounding(written, nth, null))).toEqual([1, 2, 3, 4, 1]);
  expect(places.sounding(0, 0, null)).toBeNull();
  expect(places.toChart(2, 3)).toEqual({ first: 2, last: 3, onSheet: 2 });
});

test('under a longer sheet the chart goes round, and bars chosen there stay there', () => {
  const places = sheetPlaces(bars(8), chart('| C | F | G7 | C |'));
  expect(places.sounding(1, 4, null)).toBe(5);
  const loop = places.toChart(6, 7);
  expect(loop).toEqual({ first: 2, last: 3, onSheet: 6 });
  expect([0, 1, 2, 3].map((nth) => places.sounding(2, nth, loop))).toEqual([6, 7, 6, 7]);
  // From the end of one round into the next: no stretch of the chart.
  expect(places.toChart(4, 5)).toBeNull();
});
