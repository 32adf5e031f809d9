import { expect, test } from 'vitest';
import { present } from '#core';
import { createSheet } from '../generate/create-sheet.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { parseMaterialSpec } from '../spec/material-spec.ts';
import { arrange } from './arrange.ts';
import { backingToSpec } from './backing-material.ts';
import { scoreToBacking } from './score-backing.ts';
import { scoreToTune } from './tune-part.ts';

function scoreOf(spec: unknown, id: string) {
  const read = parseMaterialSpec(spec);
  const instrument = present(findInstrument(id), id);
  if (!read.ok) throw new Error(read.error.message);
  const sheet = createSheet(read.value, { instrument, stage: 'intermediate', age: null, seed: 1 });
  if (!sheet.ok) throw new Error(sheet.error.message);
  return sheet.value.score;
}
const lead = {
  kind: 'chart',
  chart: '|: C | 1. G7 :| 2. C |',
  melody: 'C4:1 D4:1/2 E4:1/2 G4:2 | B4:4 | C5:4',
  pitch: 'concert',
  feel: 'swing',
  tempo: 200,
};

function tuneOf(score: ReturnType<typeof scoreOf>, more: { readonly keys?: readonly number[] } = {}) {
  const material = present(scoreToBacking(score), 'a band');
  const spec = { ...backingToSpec({ ...material, choruses: 2 }), tune: scoreToTune(score), ...more };
  const { parts, bars } = arrange({ ...spec, countIn: 1 }, 1);
  const from = present(
    bars.find((bar) => bar.chorus === 0),
    'a first bar',
  ).tick;
  const notes = parts.find((part) => part.name === 'tune')?.notes ?? [];
  // Its octave is the instrument's: a flute's tune lies higher than it was typed.
  const home = present(notes[0], 'a first note').midi;
  expect(home % 12).toBe(0); // C sounds, whoever reads it
  return notes.map(({ tick, midi }) => [tick - from, midi - home] as const);
}

test('the tune goes along with the band through repeats and choruses, swung as the band swings', () => {
  // At 200 the reference ratio is 2: the second quaver of the pair comes after two thirds of the beat.
  const chorus = (start: number) =>
    [
      [0, 0],
      [1, 2],
      [1 + 2 / 3, 4],
      [2, 7],
      [4, 11],
      [8, 0],
      [9, 2],
      [9 + 2 / 3, 4],
      [10, 7],
      [12, 12],
    ].map(([at = 0, up]) => [Math.round(480 * (at + start)), up]);
  expect(tuneOf(scoreOf(lead, 'flute'))).toEqual([...chorus(0), ...chorus(16)]);
});

test('it sounds as the instrument sounds, and moves with the key', () => {
  const midis = (score: ReturnType<typeof scoreOf>, keys?: readonly number[]) =>
    tuneOf(score, keys === undefined ? {} : { keys }).map(([, midi]) => midi);
  expect(midis(scoreOf(lead, 'trumpet_bb'))).toEqual(midis(scoreOf(lead, 'flute')));
  expect(midis(scoreOf(lead, 'flute'), [0, 5]).at(-1)).toBe(17);
});

test('slashes are for the player: nothing sounds', () => {
  expect(scoreToTune(scoreOf({ kind: 'chart', chart: '| C | G7 |' }, 'flute'))).toBeNull();
});
