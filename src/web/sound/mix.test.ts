import { expect, test } from 'vitest';
import type { PartName } from '#music';
import { type Mix, shareOf } from './mix.ts';

const mix = (change: Partial<Mix>): Mix => ({
  levels: { bass: 100, keys: 50, drums: 0, click: 100, drone: 100, tune: 0 },
  muted: new Set(),
  solo: new Set(),
  ...change,
});
const heard = (one: Mix) =>
  (['bass', 'keys', 'drums', 'click', 'drone'] as const).filter((part) => shareOf(one, part) > 0);
const set = (...parts: PartName[]) => new Set(parts);

test('everybody is heard as loud as their fader says', () => {
  expect(heard(mix({}))).toEqual(['bass', 'keys', 'click', 'drone']);
  expect(shareOf(mix({}), 'keys')).toBe(0.25);
});

test('a muted part is silent, others are not', () => {
  expect(heard(mix({ muted: set('bass', 'click') }))).toEqual(['keys', 'drone']);
});

test('a solo leaves the other players out, but not the count and the held tone', () => {
  expect(heard(mix({ solo: set('keys') }))).toEqual(['keys', 'click', 'drone']);
  expect(heard(mix({ solo: set('keys', 'bass') }))).toEqual(['bass', 'keys', 'click', 'drone']);
});

test('who is muted stays so in a solo', () => {
  expect(heard(mix({ solo: set('bass', 'keys'), muted: set('keys') }))).toEqual(['bass', 'click', 'drone']);
});
