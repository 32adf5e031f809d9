import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeTexts } from './merge-text.ts';
import { applyEdit, editBetween } from './text-edit.ts';

/** Texts as two hands would write them: few words, so that the same ones meet often. */
const someText = fc
  .array(fc.constantFrom('a', 'to', 'tone', ' ', ' ', '\n', '\n\n', '. ', 'é', '🎵'), { maxLength: 12 })
  .map((parts) => parts.join(''));

describe('an edit', () => {
  test.each([
    ['a c', 'a b c', [{ at: 2, cut: 0, put: 'b ' }]],
    ['to', 'tone', [{ at: 0, cut: 2, put: 'tone' }]],
    ['to\n\nplay', 'to\n\nplaying', [{ at: 4, cut: 4, put: 'playing' }]],
    ['one two three', 'one three', [{ at: 3, cut: 4, put: '' }]],
    [
      'slow: one two three',
      'Slow: one two four',
      [
        { at: 0, cut: 4, put: 'Slow' },
        { at: 14, cut: 5, put: 'four' },
      ],
    ],
    ['same', 'same', []],
  ])('from %j to %j keeps the words that stayed', (from, to, edit) => {
    expect(editBetween(from, to)).toEqual(edit);
  });

  test('law: it leads from one text to the other', () => {
    fc.assert(
      fc.property(someText, someText, (from, to) => {
        expect(applyEdit(from, editBetween(from, to))).toBe(to);
      }),
      { seed: 3, numRuns: 3000 },
    );
  });

  test('texts too long to be compared by words change as one, and soon', () => {
    const words = (stem: string) => Array.from({ length: 3000 }, (_, n) => `${stem}${n}`).join(' ');
    expect(editBetween(words('x'), words('y'))).toHaveLength(1);
  });
});

describe('[R-TEXT] two texts over one', () => {
  test.each([
    ['a', 'a', 'ab', 'ab', false],
    ['ab', 'a', 'ab', 'ab', false],
    ['x', 'a', 'ab', 'x\n\nab', true],
    ['x', 'a', 'a', 'x', false],
    ['x', 'a', '', 'x', false],
    ['', 'a', 'ab', 'ab', false],
    ['x\n\nab', 'ab', 'abc', 'x\n\nabc', false],
    ['ab\n\nx', 'ab', 'abc', 'abc\n\nx', false],
    ['x\n\nab', 'a', 'ab', 'x\n\nab', false],
    // Both wrote into an empty note, and after the same sentence.
    ['Left', '', 'Right', 'Left\n\nRight', true],
    ['Tone. Left', 'Tone.', 'Tone. Right', 'Tone. Left\n\nRight', true],
    // Each goes on with its own line.
    ['Left\n\nRight hand', 'Left\n\nRight', 'Left arm\n\nRight', 'Left arm\n\nRight hand', false],
    ['Left arm\n\nRight', 'Left\n\nRight', 'Left\n\nRight hand', 'Left arm\n\nRight hand', false],
    ['Left\n\nRight', 'Left', 'Left\nlower', 'Left\n\nRight\nlower', false],
    ['Left\n\nRight', 'Left', 'Left arm', 'Left arm\n\nRight', false],
    ['to sing\n\nto', 'to sing\n\nto', 'to sing\n\ntomorrow', 'to sing\n\ntomorrow', false],
    // One mends a word, the other goes on after it.
    ['Tone', 'Tnoe', 'Tnoe better', 'Tone better', false],
    // The same words from both are one change; the same first words may begin two sentences.
    ['Play the scale in D', '', 'Play the scale in D', 'Play the scale in D', false],
    ['The tone', '', 'The tone', 'The tone\n\nThe tone', true],
  ])('stored %j, typed %2$j over %1$j', (theirs, base, mine, text, bothKept) => {
    expect(mergeTexts({ base, theirs, mine })).toMatchObject({ text, bothKept });
  });

  test('law: what either did leads from the other’s text to the same text', () => {
    fc.assert(
      fc.property(someText, someText, someText, (base, theirs, mine) => {
        const { text, overMine, overTheirs } = mergeTexts({ base, theirs, mine });
        expect(applyEdit(mine, overMine)).toBe(text);
        expect(applyEdit(theirs, overTheirs)).toBe(text);
      }),
      { seed: 5, numRuns: 5000 },
    );
  });

  test('law: a text that one alone changed is as that one left it', () => {
    fc.assert(
      fc.property(someText, someText, (base, other) => {
        expect(mergeTexts({ base, theirs: other, mine: base }).text).toBe(other);
        expect(mergeTexts({ base, theirs: base, mine: other }).text).toBe(other);
        expect(mergeTexts({ base, theirs: base, mine: other }).bothKept).toBe(false);
      }),
      { seed: 6, numRuns: 2000 },
    );
  });
});
