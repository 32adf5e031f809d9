import { expect, test } from 'vitest';
import { formatMetre, parseMetre } from './metre.ts';

// Groups: shared reference table of rhythm (`beam_groups`), after Gould, Behind Bars 2011, recalled.
test.each([
  ['2/4', [1, 1]],
  ['3/4', [1, 1, 1]],
  ['4/4', [2, 2]],
  ['2/2', [1, 1]],
  ['3/8', [3]],
  ['6/8', [3, 3]],
  ['12/8', [3, 3, 3, 3]],
  ['6/4', [3, 3]],
  ['5/4', [3, 2]],
  ['5/8', [3, 2]],
  ['7/8', [2, 2, 3]],
  ['7/4', [2, 2, 3]],
  ['8/8', [2, 2, 2, 2]],
  ['11/8', [2, 2, 2, 2, 3]],
])('%s divides %j', (text, groups) => {
  const metre = parseMetre(text);
  expect(metre?.groups).toEqual(groups);
  expect(metre === null ? null : formatMetre(metre)).toBe(text);
});

test('groups can be given, when they fill the bar', () => {
  expect(parseMetre('7/8 (3+2+2)')?.groups).toEqual([3, 2, 2]);
  expect(parseMetre('8/8 (3+3+2)')?.groups).toEqual([3, 3, 2]);
  expect(parseMetre('7/8 (3+2)')).toBeNull();
});

test.each(['', '4', '4/3', '0/4', '33/8', '4/4/4', 'C'])('%j is no metre', (text) => {
  expect(parseMetre(text)).toBeNull();
});
