import { expect, test } from 'vitest';
import { barAfterKey, pressBar, rangeOf } from './choose-bars.ts';

test('the first press takes one bar, the second as far as there, either way round', () => {
  const one = pressBar(null, 5);
  expect(one).toEqual({ first: 5, last: 5 });
  expect(pressBar(one, 8)).toEqual({ first: 5, last: 8 });
  expect(pressBar(one, 2)).toEqual({ first: 2, last: 5 });
});

test('one bar pressed again is let go, and after a stretch a press begins anew', () => {
  expect(pressBar(rangeOf(5, 5), 5)).toBeNull();
  expect(pressBar(rangeOf(8, 5), 6)).toEqual({ first: 6, last: 6 });
});

test.each([
  ['ArrowRight', 3, 4],
  ['ArrowLeft', 3, 2],
  ['ArrowDown', 3, 7],
  ['ArrowUp', 3, 3],
  ['ArrowRight', 12, 12],
  ['Home', 7, 1],
  ['End', 7, 12],
] as const)('%s leads from bar %i to bar %i of twelve in fours', (key, from, to) => {
  expect(barAfterKey(key, from, 12, 4)).toBe(to);
});

test('other keys lead nowhere', () => {
  expect(barAfterKey('a', 3, 12, 4)).toBeNull();
});
