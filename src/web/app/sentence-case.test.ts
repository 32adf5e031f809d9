import { expect, test } from 'vitest';
import { sentenceCase } from './sentence-case.ts';

test.each([
  ['holds a long note', 'Holds a long note'],
  ['The long road', 'The long road'],
  ['éclat at the start', 'Éclat at the start'],
  ['𐐨 begins outside the first plane', '𐐀 begins outside the first plane'],
  ['5 notes', '5 notes'],
  ['“quoted”', '“quoted”'],
  ['', ''],
])('%s stands as %s', (title, shown) => {
  expect(sentenceCase(title)).toBe(shown);
});
