import { expect, test } from 'vitest';
import { readKeyList } from './key-list.ts';

test.each([
  ['0 5 -2', [0, 5, -2]],
  [' 0,3 , 6;9 ', [0, 3, 6, 9]],
  ['−4', [-4]],
])('%s is read', (text, list) => expect(readKeyList(text)).toEqual(list));

test.each(['', 'up', '0 12', '1.5', '0 '.repeat(65)])('%s is no list of keys', (text) => {
  expect(readKeyList(text)).toBeNull();
});
