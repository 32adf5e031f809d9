import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createSeededRandom } from '#core';
import { parseTakeContext, type TakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { alignTake } from './align-take.ts';
import { beatToSeconds, secondsToBeat } from './grid.ts';
import { swungPlace } from './swing.ts';

function contextOf(fields: object): TakeContext {
  const context = parseTakeContext(fields);
  if (!context.ok) throw new Error(context.error.message);
  return context.value;
}

interface Played {
  readonly tempo: number;
  readonly offset: number;
  readonly swing?: number;
  /** Part by which a beat lasts longer for every beat that has gone by. */
  readonly slowing?: number;
  readonly jitter?: number;
}

/** Notes at beats with lengths in beats, played with the given feel. */
function play(line: readonly (readonly [at: number, length: number])[], how: Played): HeardNote[] {
  const random = createSeededRandom(5);
  const { tempo, offset, swing = 0.5, slowing = 0, jitter = 0 } = how;
  const place = (at: number) => {
    const beat = Math.floor(at) + swungPlace(at - Math.floor(at), swing);
    return offset + (60 / tempo) * (beat + (slowing * beat * beat) / 2);
  };
  return line.map(([at, length], i) => {
    const onset = place(at) + (random.next() - 0.5) * 2 * jitter;
    const end = place(at + length);
    return {
      onset,
      offset: onset + (end - onset) * 0.88,
      midi: 60 + (i % 7),
      cents: 0,
      db: -20,
      confidence: 1,
    };
  });
}

const tune: readonly (readonly [number, number])[] = [
  [0, 1], [1, 0.5], [1.5, 0.5], [2, 1.5], [3.5, 0.5],
  [4, 0.5], [4.5, 0.5], [5, 1], [6, 1],
  [8, 2], [10, 0.5], [10.5, 0.5], [11, 1],
  [12, 1], [13, 0.5], [13.5, 0.5], [14, 1], [16, 1], [17, 1], [18, 2],
]; // biome-ignore format: one bar a line
const ticks = tune.map(([at]) => at * 12);
const lengths = tune.map(([, length]) => length * 12);

test('a take on a given grid is written as it was played, rests included', () => {
  const aligned = alignTake(play(tune, { tempo: 96, offset: 0.8 }), contextOf({ tempo: 96, offsetS: 0.8 }));
  expect(aligned?.rhythm.map((r) => r.tick)).toEqual(ticks);
  expect(aligned?.rhythm.map((r) => r.ticks)).toEqual(lengths);
  expect(aligned?.grid).toMatchObject({ offset: 0.8, tempo: 96, isGiven: true });
  expect(aligned?.rhythm[3]?.at).toEqual({ n: 1, d: 2 });
  expect(aligned?.rhythm[3]?.length).toEqual({ n: 3, d: 8 });
});

test.each([60, 90, 140, 200])('the start is found when only the tempo of %d is known', (tempo) => {
  const aligned = alignTake(play(tune, { tempo, offset: 1.37, jitter: 0.012 }), contextOf({ tempo }));
  expect(aligned?.rhythm.map((r) => r.tick)).toEqual(ticks);
  expect(Math.abs((aligned?.grid.offset ?? 0) - 1.37)).toBeLessThan(0.02);
  expect(aligned?.grid.tempo).toBeCloseTo(tempo, 0);
});

test.each([72, 96, 132])('a tempo of %d is found where none is told', (tempo) => {
  const aligned = alignTake(play(tune, { tempo, offset: 0.7, jitter: 0.008 }), contextOf({}));
  expect(Math.abs((aligned?.grid.tempo ?? 0) / tempo - 1)).toBeLessThan(0.01);
  expect(aligned?.rhythm.map((r) => r.tick)).toEqual(ticks);
});

test('a tempo that slows by a tenth is followed', () => {
  const notes = play([...tune, ...tune.map(([a, l]) => [a + 20, l] as const)], {
    tempo: 100,
    offset: 0.5,
    slowing: 0.0025,
  });
  const aligned = alignTake(notes, contextOf({ tempo: 100 }));
  expect(aligned?.rhythm.map((r) => r.tick)).toEqual([...ticks, ...ticks.map((t) => t + 240)]);
  expect(aligned?.grid.drift).toBeLessThan(-4);
  expect(Math.max(...(aligned?.rhythm.map((r) => Math.abs(r.late)) ?? [9]))).toBeLessThan(0.05);
});

test('swing is found, not taken for lateness', () => {
  const aligned = alignTake(
    play(tune, { tempo: 120, offset: 0.4, swing: 0.64 }),
    contextOf({ tempo: 120, offsetS: 0.4 }),
  );
  expect(aligned?.rhythm.map((r) => r.tick)).toEqual(ticks);
  expect(Math.abs((aligned?.grid.swing ?? 0) - 0.64)).toBeLessThan(0.03);
});

test('a player 40 ms late throughout is late on the given grid', () => {
  const aligned = alignTake(play(tune, { tempo: 110, offset: 1.04 }), contextOf({ tempo: 110, offsetS: 1 }));
  expect(aligned?.grid.offset).toBe(1);
  for (const { late } of aligned?.rhythm ?? []) expect(Math.abs(late - 0.04)).toBeLessThan(0.004);
});

test('triplets stay triplets beside quavers', () => {
  const third = 1 / 3;
  const line = [0, 1, 2, 3].flatMap((bar) => [
    [bar * 4, third], [bar * 4 + third, third], [bar * 4 + 2 * third, third],
    [bar * 4 + 1, 0.5], [bar * 4 + 1.5, 0.5], [bar * 4 + 2, 2],
  ] as const); // biome-ignore format: a beat a line
  const aligned = alignTake(
    play(line, { tempo: 80, offset: 0.6, jitter: 0.008 }),
    contextOf({ tempo: 80, offsetS: 0.6 }),
  );
  expect(aligned?.rhythm.map((r) => r.tick % 48)).toEqual([0, 1, 2, 3].flatMap(() => [0, 4, 8, 12, 18, 24]));
});

test('after a count-in, bar 1 is where the counting ends', () => {
  const aligned = alignTake(play([[1, 1], [2, 1], [3, 1], [4, 2], [6, 1], [7, 1]], { tempo: 100, offset: 2.4 }), contextOf({ tempo: 100, countInBeats: 4 })); // biome-ignore format: one line
  expect(aligned?.grid.offset).toBeCloseTo(2.4, 1);
  expect(aligned?.rhythm[0]?.tick).toBe(12);
});

test('six-eight is counted in dotted crotchets', () => {
  const line = Array.from(
    { length: 16 },
    (_, i) => [Math.floor(i / 2) + (i % 2) * (2 / 3), i % 2 === 0 ? 2 / 3 : 1 / 3] as const,
  );
  const aligned = alignTake(
    play(line, { tempo: 66, offset: 0.5 }),
    contextOf({ tempo: 66, metre: [6, 8], offsetS: 0.5 }),
  );
  expect(aligned?.rhythm.slice(0, 4).map((r) => r.tick)).toEqual([0, 8, 12, 20]);
  expect(aligned?.rhythm[0]?.length).toEqual({ n: 1, d: 4 });
});

test('too few notes have no grid of their own', () => {
  expect(alignTake([], contextOf({}))).toBeNull();
  expect(alignTake(play([[0, 1], [1, 1]], { tempo: 100, offset: 1 }), contextOf({}))).toBeNull(); // biome-ignore format: one line
});

test('any notes at all are placed in order, without throwing', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(
          fc.double({ min: 0.02, max: 3, noNaN: true }),
          fc.double({ min: 0.01, max: 1, noNaN: true }),
        ),
        { maxLength: 60 },
      ),
      fc.record({
        tempo: fc.option(fc.integer({ min: 30, max: 240 })),
        offsetS: fc.option(fc.double({ min: 0, max: 4, noNaN: true })),
      }),
      (steps, fields) => {
        let at = 0;
        const notes = steps.map(([gap, share]): HeardNote => {
          at += gap;
          return { onset: at, offset: at + gap * share, midi: 60, cents: 0, db: -20, confidence: 1 };
        });
        const aligned = alignTake(notes, contextOf(fields));
        for (const r of aligned?.rhythm ?? []) {
          expect(Number.isInteger(r.tick)).toBe(true);
          expect(r.ticks).toBeGreaterThan(0);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('beats and seconds are each other’s inverse on a bent grid', () => {
  const grid = { offset: 1, tempo: 100, swing: 0.5, drift: 0, isGiven: false, anchors: [{ beat: 0, seconds: 1 }, { beat: 4, seconds: 3.4 }, { beat: 8, seconds: 6 }] }; // biome-ignore format: one line
  for (const beat of [-3, 0, 1.5, 4, 7.9, 12])
    expect(secondsToBeat(grid, beatToSeconds(grid, beat))).toBeCloseTo(beat, 9);
});
