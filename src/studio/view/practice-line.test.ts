import { expect, test } from 'vitest';
import { readAtHome } from './practice-line.ts';

test.each([
  [
    'Walk.\n\n**Harder:** run.\n\n**At home:** Walk to one song a day.\nStop with it.',
    'Walk to one song a day. Stop with it.',
  ],
  ['At home: Play *softly*, twice.', 'Play softly, twice.'],
  ['Ask what is sung at home: any tune.', null],
  ['**At home:**', null],
  ['', null],
])('what is to be done at home is read from %j', (howTo, wanted) => {
  expect(readAtHome(howTo)).toBe(wanted);
});
