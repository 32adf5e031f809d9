import { describe, expect, test } from 'vitest';
import { createNameFinder, eraseFound, nameWords } from './erase-names.ts';

const erase = (
  text: string,
  names: readonly string[],
  others: readonly string[] = [],
  called: readonly string[] = [],
) => eraseFound(text, createNameFinder(nameWords(names, called, others))(text));

describe('a name in running text', () => {
  test.each([
    ['Lina Marsh was here.', '[name erased] was here.'],
    ['lina  marsh was here', '[name erased] was here'],
    ['LINA MARSH’s bow', '[name erased]’s bow'],
    ['Linas Heft, Marshs Heft', '[name erased] Heft, [name erased] Heft'], // a genitive without an apostrophe
    ['Lina, lina, Linas and Linate', '[name erased], lina, [name erased] and Linate'],
    ['Carolina by the marsh', 'Carolina by the marsh'],
    ['Lina-Marie', '[name erased]-Marie'],
    ['(Lina)', '([name erased])'],
    ['nobody', 'nobody'],
    ['', ''],
  ])('%s', (text, erased) => {
    expect(erase(text, ['Lina Marsh'])).toBe(erased);
  });

  test('a word that is a name too is put out only as a name is written', () => {
    expect(erase('Mark: mark the beat', ['Mark Aldous'])).toBe('[name erased]: mark the beat');
    expect(erase('mark the beat', ['mark'])).toBe('[name erased] the beat'); // as it was entered
  });

  test('an accent may be a letter of its own, and a name may hold signs', () => {
    expect(erase('Zoe\u0308 and Zo\u00eb', ['Zo\u00eb O’Hara'])).toBe('[name erased] and [name erased]');
    expect(erase('J. R. (Bo) [x] rang', ['J. R. (Bo) [x]'])).toBe('[name erased] rang');
    expect(erase('Ann-Sofie ringer', ['Ann-Sofie Å.'])).toBe('[name erased] ringer');
  });

  test('a family name that somebody else has stays theirs, and a given name that is shared is marked', () => {
    expect(erase('Tom Marsh and Lina Marsh', ['Lina Marsh'], ['Tom Marsh'])).toBe(
      'Tom Marsh and [name erased]',
    );
    const words = nameWords(['Lina Marsh'], [], ['Lina Vane']);
    expect(words.map(({ text, isShared }) => [text, isShared])).toEqual([
      ['Lina Marsh', false],
      ['Marsh', false],
      ['Lina', true],
    ]);
    expect(nameWords(['Lina Marsh'], [], ['lina marsh'])[0]?.isShared).toBe(true);
  });

  test('a title is no name, and neither is one letter', () => {
    expect(nameWords(['Mrs Aldous', 'Dr. I Vane'], ['x'], []).map(({ text }) => text)).toEqual([
      'Mrs Aldous',
      'Dr. I Vane',
      'Aldous',
      'Vane',
    ]);
  });

  test('names given by hand are found like full ones', () => {
    expect(erase('Linchen and little bear', ['Lina Marsh'], [], ['Linchen', 'Little  Bear'])).toBe(
      '[name erased] and [name erased]',
    );
  });
});
