import { expect, test } from 'vitest';
import { present } from '#core';
import { findInstrument } from '../instrument/instrument.ts';
import { formatPitch } from '../pitch/pitch.ts';
import type { Score } from '../score/score.ts';
import { parseMaterialSpec } from '../spec/material-spec.ts';
import { createSheet } from './create-sheet.ts';
import { fuzzSheets } from './fuzz-sheets.contract.ts';

// Seeds are pinned: a failure prints the seed, the student and the spec. bench/materials/fuzz.ts goes on from here.
test.each([1, 1001, 2001, 3001, 4001])(
  'a thousand sheets from seed %i on are sound, in range, well spelled and the same twice',
  (seed) => {
    const { byKind, failures } = fuzzSheets(1000, seed);
    expect(failures).toEqual([]);
    for (const [kind, { made, refused }] of byKind)
      expect(refused / (made + refused), kind).toBeLessThan(0.1);
  },
  300_000,
);

function sheet(
  spec: unknown,
  instrumentId: string,
  stage: 'beginner' | 'elementary' | 'intermediate' | 'advanced',
  seed = 1,
) {
  const read = parseMaterialSpec(spec);
  if (!read.ok) throw new Error(read.error.message);
  const instrument = present(findInstrument(instrumentId), instrumentId);
  return createSheet(read.value, { instrument, stage, age: null, seed });
}

function score(...args: Parameters<typeof sheet>): Score {
  const made = sheet(...args);
  if (!made.ok) throw new Error(made.error.message);
  return made.value.score;
}

/** Pitches of the first part, bar by bar; `-` is a rest, `/` a slash. */
function line(of: Score): string {
  const bars = present(of.parts[0], 'a part').bars.map((bar) =>
    present(bar.voices[0], 'a voice')
      .events.map((event) =>
        event.kind === 'note'
          ? event.heads.map(({ pitch }) => formatPitch(pitch)).join('+')
          : event.kind === 'rest'
            ? '-'
            : '/',
      )
      .join(' '),
  );
  return bars.join(' | ');
}

// A melodic minor comes down as natural minor (standard theory); patterns are common practice, no source.
test.each([
  [{ kind: 'scale', keys: 1 }, 'trumpet_bb', 'C4 D4 E4 F4 | G4 A4 B4 C5 | B4 A4 G4 F4 | E4 D4 C4'],
  [
    { kind: 'scale', scale: 'melodic_minor', start: 'A', octaves: 1, value: 'quaver' },
    'flute',
    'A4 B4 C5 D5 E5 F#5 G#5 A5 | G5 F5 E5 D5 C5 B4 A4',
  ],
  [
    { kind: 'scale', scale: 'melodic_minor', descent: 'same', start: 'A', octaves: 1, value: 'quaver' },
    'flute',
    'A4 B4 C5 D5 E5 F#5 G#5 A5 | G#5 F#5 E5 D5 C5 B4 A4',
  ],
  [
    { kind: 'scale', pattern: 'thirds', start: 'C', octaves: 1, value: 'quaver' },
    'violin',
    'C4 E4 D4 F4 E4 G4 F4 A4 | G4 B4 C5 A4 B4 G4 A4 F4 | G4 E4 F4 D4 C4',
  ],
  [
    { kind: 'arpeggio', start: 'C', octaves: 1, pattern: 'inversions', value: 'quaver', metre: '4/4' },
    'trumpet_bb',
    'C4 E4 G4 C5 G4 E4 C4',
  ],
] as const)('%j reads as expected', (spec, instrument, notes) => {
  expect(line(score(spec, instrument, 'beginner'))).toBe(notes);
});

test('a beginner’s keys are those the instrument begins with, the range permitting', () => {
  const labels = score({ kind: 'scale', keys: 3 }, 'alto_sax', 'beginner').parts[0]?.bars.flatMap((bar) =>
    bar.directions.flatMap((d) => (d.kind === 'words' ? [d.text] : [])),
  );
  expect(labels).toEqual(['G major', 'D major', 'C major']);
});

test('octaves the stage does not reach are cut, and the sheet says so', () => {
  const made = sheet({ kind: 'scale', octaves: 3, start: 'C' }, 'trumpet_bb', 'beginner');
  expect(made.ok && made.value.notes.map(({ text }) => text)).toEqual([
    'C major: 3 octaves became one octave: range of the stage.',
  ]);
});

test('a named concert key is written for the instrument', () => {
  const of = score({ kind: 'scale', start: 'Bb', pitch: 'concert', keys: 1 }, 'alto_sax', 'intermediate');
  expect(of.parts[0]?.bars[0]?.key).toEqual({ tonic: { letter: 'G', alter: 0 }, mode: 'major' });
});

test('a tune goes with its chart into the student’s key and octave, pickup and all', () => {
  const spec = {
    kind: 'chart',
    chart: '| G | D7 | G C | G |',
    melody: 'D4:1 | G4:1 B4:1 A4:1 G4:1 | F#4:1 A4:1 D4:2 | G4:1 B4:1/2 C5:1/2 D5:1 C5:1 | B4:3',
    key: 'fit',
  };
  const of = score(spec, 'trumpet_bb', 'beginner');
  expect(line(of)).toBe('C4 | F4 A4 G4 F4 | E4 G4 C4 | F4 A4 Bb4 C5 Bb4 | A4 -');
  expect(of.bars.map(({ number }) => number)).toEqual([0, 1, 2, 3, 4]);
});

test('a tune that no octave holds is refused with the reason', () => {
  const made = sheet({ kind: 'chart', chart: '| C |', melody: 'C2:2 C6:2' }, 'trumpet_bb', 'beginner');
  expect(made.ok || made.error.message).toContain('does not fit the range');
});

test('guide tones move by step or stay where roots fall by fifths', () => {
  const of = score(
    { kind: 'line', content: 'guide_tones', chart: '| Dm7 | G7 | Cmaj7 | F7 |', choruses: 1 },
    'violin',
    'intermediate',
  );
  expect(['F4 F4 E4 Eb4', 'C5 B4 B4 A4', 'F5 F5 E5 Eb5']).toContain(line(of).replaceAll(' | ', ' '));
});
