import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { findScoreFaults, formatPitch, parseKey, type ScoreEvent } from '#music';
import { alignTake } from '../alignment/align-take.ts';
import { parseTakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { spellHeard } from './spell-heard.ts';
import { type WrittenTake, writeTake } from './write-take.ts';

/** Notes at beats of 120 a minute, written. */
function write(
  line: readonly (readonly [at: number, length: number, midi: number])[],
  fields: object = {},
): WrittenTake | null {
  const context = parseTakeContext({ tempo: 120, offsetS: 2, swing: 0.5, ...fields });
  if (!context.ok) throw new Error(context.error.message);
  const notes = line.map(([at, length, midi]): HeardNote => {
    const onset = 2 + at * 0.5;
    return { onset, offset: onset + length * 0.45, midi, cents: 0, db: -20, confidence: 1 };
  });
  const alignment = alignTake(notes, context.value);
  if (alignment === null) return null;
  return writeTake({ notes, alignment, phrases: [], context: context.value });
}

function show(take: WrittenTake | null): readonly string[] {
  const name = (event: ScoreEvent) =>
    event.kind === 'note'
      ? event.heads.map((head) => formatPitch(head.pitch) + (head.isTied ? '~' : '')).join('+')
      : 'rest';
  return present(take, 'a written take').score.parts[0]?.bars.map((bar) =>
    present(bar.voices[0], 'a voice').events.map((event) => `${name(event)} ${event.duration.n}/${event.duration.d}`).join(', '),
  ) ?? []; // biome-ignore format: one expression
}

test('notes and rests fill the bars, ties go over the bar line', () => {
  const take = write([[0, 1, 60], [1, 0.5, 62], [1.5, 0.5, 64], [3, 2, 65], [5, 1, 67], [6, 2, 60]]); // biome-ignore format: one line
  expect(show(take)).toEqual(['C4 1/4, D4 1/8, E4 1/8, rest 1/4, F4~ 1/4', 'F4 1/4, G4 1/4, C4 1/2']);
  expect(take?.noteOf).toEqual([
    [0, 1, 2, null, 3],
    [3, 4, 5],
  ]);
});

test('triplets stand in their beat, and a note tied into it too', () => {
  const third = 1 / 3;
  const take = write([[0, third, 60], [third, third, 62], [2 * third, third, 64], [1, 1, 65], [2, 1 + third, 67], [3 + third, 2 * third, 65]]); // biome-ignore format: one line
  expect(show(take)).toEqual(['C4 1/12, D4 1/12, E4 1/12, F4 1/4, G4~ 1/4, G4 1/12, F4 1/6']);
  expect(findScoreFaults(present(take, 'a take').score)).toEqual([]);
});

test('a transposing instrument reads its own pitch, key and chords', () => {
  const take = write(
    [
      [0, 1, 58],
      [1, 1, 60],
      [2, 1, 62],
      [3, 1, 63],
    ],
    {
      instrument: 'alto_sax',
      scale: { tonic: 'Bb', name: 'major' },
      chart: 'Bb',
    },
  );
  expect(show(take)).toEqual(['G4 1/4, A4 1/4, B4 1/4, C5 1/4']);
  const bar = take?.score.parts[0]?.bars[0];
  expect(bar?.key.tonic).toMatchObject({ letter: 'G', alter: 0 });
  expect(bar?.chords[0]?.chord?.root).toMatchObject({ letter: 'G', alter: 0 });
});

test.each([
  ['C', 61, 'C#4'],
  ['C', 70, 'Bb4'],
  ['C', 66, 'F#4'],
  ['Eb', 66, 'Gb4'],
  ['Eb', 59, 'B3'],
  ['A', 68, 'G#4'],
] as const)('in %s major key %d is %s', (key, midi, name) => {
  expect(formatPitch(spellHeard(midi, present(parseKey(key), 'a key')))).toBe(name);
});

test('whatever was played, the score has no faults and shows every note', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(
          fc.constantFrom(0.25, 1 / 3, 0.5, 2 / 3, 1, 1.5, 2, 3),
          fc.double({ min: 0.2, max: 1, noNaN: true }),
          fc.integer({ min: 50, max: 84 }),
        ),
        { minLength: 4, maxLength: 40 },
      ),
      fc.constantFrom([4, 4], [3, 4], [6, 8], [7, 8], [2, 2]),
      fc.constantFrom('flute', 'trumpet_bb', 'double_bass', 'alto_sax'),
      (steps, metre, instrument) => {
        let at = 0;
        const line = steps.map(([gap, share, midi]) => {
          at += gap;
          return [at, gap * share, midi] as const;
        });
        const take = write(line, { metre, instrument });
        if (take === null) return;
        expect(findScoreFaults(take.score)).toEqual([]);
        const shapes = take.score.parts[0]?.bars.map((bar) => bar.voices[0]?.events.length);
        expect(take.noteOf.map((bar) => bar.length)).toEqual(shapes);
      },
    ),
    { numRuns: 80 },
  );
});
