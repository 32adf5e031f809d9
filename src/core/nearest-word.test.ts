import { expect, test } from 'vitest';
import { nearestWord, nearWord } from './nearest-word.ts';

test.each([
  ['minuts', 'minutes'],
  ['tittle', 'title'],
  ['Minutes', 'minutes'],
  ['xyzzy', null],
])('near to %s is %s', (word, near) => {
  expect(nearWord(word, ['title', 'minutes', 'about'])).toBe(near);
});

// kitten to sitting takes three edits (the usual example of the distance; from memory), to bitten one
test('the nearest of some words is found however far it is', () => {
  expect(nearestWord('kitten', ['sitting', 'bitten'])).toBe('bitten');
  expect(nearestWord('xyzzy', ['title', 'about'])).toBe('title');
});
