import { expect, test } from 'vitest';
import { beatFrame, createHarmony, parseTakeContext } from './take-context.ts';

test('every field may be missing', () => {
  const context = parseTakeContext({});
  expect(context.ok && context.value).toMatchObject({
    tempo: null,
    offsetS: null,
    chart: null,
    countInBeats: 0,
  });
});

test('scales are known by any of their names, and chords by beat', () => {
  const context = parseTakeContext({
    scale: { tonic: 'Bb', name: 'Major Pentatonic' },
    chart: 'Bb | F7 Gm',
    metre: [4, 4],
  });
  if (!context.ok) throw new Error(context.error.message);
  expect([...(context.value.scale ?? [])].sort((a, b) => a - b)).toEqual([0, 2, 5, 7, 10]);
  const harmony = createHarmony(context.value);
  expect(harmony(0)?.has(10)).toBe(true);
  expect(harmony(4)?.has(9)).toBe(true);
  // the chart begins again
  expect(harmony(8)?.has(10)).toBe(true);
});

test.each([
  ['4/4', [4, 4], 4, false],
  ['6/8', [6, 8], 2, true],
  ['7/8', [7, 8], 7, false],
  ['2/2', [2, 2], 2, false],
] as const)('%s has its beats', (_name, metre, beats, isCompound) => {
  const context = parseTakeContext({ metre });
  expect(context.ok && beatFrame(context.value.metre)).toMatchObject({ beatsPerBar: beats, isCompound });
});

test.each([
  [[], /not an object/],
  [{ tempo: 'fast' }, /tempo is "fast": write a number/],
  [{ tempo: 1e9 }, /tempo/],
  [{ metre: [4] }, /metre/],
  [{ scale: { tonic: 'H', name: 'major' } }, /tonic is "H"/],
  [{ scale: { tonic: 'C', name: 'sad' } }, /"sad" is not known/],
  [{ chart: 'Q7 |' }, /chart/],
  [{ instrument: 'kazoo' }, /"kazoo" is not known/],
] as const)('%j is refused with its field', (value, message) => {
  const context = parseTakeContext(value);
  expect(!context.ok && context.error.message).toMatch(message);
});
