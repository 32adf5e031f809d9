import { expect, test } from 'vitest';
import { readName, readWords } from './read-words.ts';

const options = { port: { type: 'string' }, data: { type: 'string' } } as const;

test('options and other words are told apart', () => {
  expect(readWords(['a.json', '--port', '4000'], options)).toMatchObject({
    ok: true,
    value: { positionals: ['a.json'], values: { port: '4000' } },
  });
});

test('an option that is not there is named, with the nearest that is', () => {
  expect(readWords(['--prot', '4000'], options)).toEqual({
    ok: false,
    error: 'there is no option --prot here. The nearest is --port. `levare help` lists them.',
  });
});

test('where there are no options, one is still named', () => {
  expect(readWords(['--port'], {})).toEqual({
    ok: false,
    error: 'there is no option --port here. `levare help` lists them.',
  });
});

test.each([[['--port']], [['--port', '-1']]])(
  'an option without its value is named, and how to write one: %j',
  (words) => {
    expect(readWords(words, options)).toEqual({
      ok: false,
      error: '--port lacks its value: write --port=VALUE.',
    });
  },
);

test('a value where none is taken is refused', () => {
  expect(readWords(['--no-open=yes'], { 'no-open': { type: 'boolean' } })).toEqual({
    ok: false,
    error: '--no-open takes no value.',
  });
});

test('one name is read; none or several are refused', () => {
  const read = (words: readonly string[]) =>
    readName({ positionals: words, values: {} }, 'file', 'levare export FILE');
  expect(read(['a'])).toEqual({ ok: true, value: 'a' });
  expect(read([])).toEqual({ ok: false, error: 'name one file: levare export FILE' });
  expect(read(['a', 'b'])).toEqual({ ok: false, error: 'name one file only; b is too much.' });
});
