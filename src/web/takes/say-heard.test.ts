import { expect, test } from 'vitest';
import { words } from '../words/index.ts';
import { sayHeard } from './say-heard.ts';

test('what was heard is said in sentences, each with its one stop', () => {
  const told = words.takes.result.heard(3, '0:04');
  expect(sayHeard({ notes: 3, seconds: 4, problems: [] })).toBe(`${told}.`);
  expect(
    sayHeard({
      notes: 3,
      seconds: 4,
      problems: [
        { kind: 'TooQuiet', db: -61 },
        { kind: 'OutsideRange', share: 0.4 },
      ],
    }),
  ).toBe(
    `${told}. The recording is silent or very quiet (-61 dB): turn the input up, or come nearer. 40 % of the notes lie outside what the instrument can play: was another one played, or does something else sound?`,
  );
});
