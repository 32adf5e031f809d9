import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { present, stages } from '#core';
import { keyFifths } from '../key/key.ts';
import { fifthsToName, formatPitch, parsePitch, pitchToMidi, written } from '../pitch/pitch.ts';
import { comfortableKeys } from './comfortable-keys.ts';
import {
  findInstrument,
  fullRange,
  isInRange,
  listInstruments,
  openStrings,
  rangeAtStage,
  soundingToWritten,
  writtenToSounding,
} from './instrument.ts';

const anyWritten = fc
  .record({ fifths: fc.integer({ min: -8, max: 12 }), octave: fc.integer({ min: 2, max: 6 }) })
  .map(({ fifths, octave }) => written({ ...fifthsToName(fifths), octave }));

describe.each([...listInstruments()])('$id', (instrument) => {
  test('written to sounding and back keeps the spelling', () => {
    fc.assert(
      fc.property(anyWritten, (pitch) => {
        expect(soundingToWritten(instrument, writtenToSounding(instrument, pitch))).toEqual(pitch);
      }),
      { numRuns: 30 },
    );
  });

  test('stage ranges nest inside the full range', () => {
    let outer = fullRange(instrument);
    for (const stage of stages.toReversed()) {
      const range = rangeAtStage(instrument, stage);
      expect(isInRange(outer, range.low) && isInRange(outer, range.high), stage).toBe(true);
      expect(pitchToMidi(range.high) - pitchToMidi(range.low)).toBeGreaterThanOrEqual(12);
      outer = range;
    }
  });

  test.each(['major', 'minor'] as const)('%s keys: later stages start alike and go further', (mode) => {
    let before: readonly number[] = [];
    for (const stage of stages) {
      const keys = comfortableKeys(instrument, stage, mode).map(keyFifths);
      expect(new Set(keys).size).toBe(keys.length);
      expect(keys).toEqual(expect.arrayContaining([...before]));
      expect(keys.length).toBeGreaterThan(before.length - 1);
      if (before.length > 0) expect(keys[0]).toBe(before[0]);
      before = keys;
    }
  });

  test('open strings can be written on it', () => {
    for (const string of openStrings(instrument)) {
      expect(isInRange(fullRange(instrument), soundingToWritten(instrument, string))).toBe(true);
    }
  });
});

test('a saxophonist’s F sharp sounds A', () => {
  const alto = present(findInstrument('alto_sax'), 'what the test names');
  expect(
    formatPitch(writtenToSounding(alto, written(present(parsePitch('F#5'), 'what the test names')))),
  ).toBe('A4');
});
