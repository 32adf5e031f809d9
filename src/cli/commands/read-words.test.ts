import { expect, test } from 'vitest';
import { readWords } from './read-words.ts';

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

test('an option without its value is named', () => {
  expect(readWords(['--port'], options)).toMatchObject({
    ok: false,
    error: expect.stringContaining('--port'),
  });
});
