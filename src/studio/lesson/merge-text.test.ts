import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mergeText } from './merge-text.ts';

test.each([
  ['a', 'a', 'ab', 'ab', false],
  ['ab', 'a', 'ab', 'ab', false],
  ['x', 'a', 'ab', 'x\n\nab', true],
  ['x', 'a', 'a', 'x', false],
  ['x', 'a', '', 'x', false],
  ['', 'a', 'ab', 'ab', false],
  ['x\n\nab', 'ab', 'abc', 'x\n\nabc', true],
  ['ab\n\nx', 'ab', 'abc', 'abc\n\nx', true],
  ['x\n\nab', 'a', 'ab', 'x\n\nab', false],
])('[R-TEXT] stored %j, typed %2$j over %1$j', (stored, base, typed, text, bothKept) => {
  expect(mergeText({ stored, base, typed })).toEqual({ text, bothKept });
});

test('[R-TEXT] a queue that comes late loses nothing and doubles nothing', () => {
  // Keystrokes typed offline arrive one after the other, each over the one before; meanwhile another window wrote.
  const word = fc.stringMatching(/^[a-z]{1,6}$/);
  fc.assert(
    fc.property(word, fc.array(word, { minLength: 1, maxLength: 6 }), word, (start, words, other) => {
      let stored = other;
      let base = start;
      for (const next of words) {
        const typed = `${base} ${next}`;
        stored = mergeText({ stored, base, typed }).text;
        base = typed;
      }
      if (other === start) expect(stored).toBe(base);
      else expect(stored).toBe(`${other}\n\n${base}`);
    }),
    { seed: 1 },
  );
});
