import { expect, test } from 'vitest';
import { isTyped, splitNames } from './typed-names.ts';

test('a name is typed when it is the same to the eye', () => {
  expect(isTyped(' Zoë  Marsh ', 'Zoe\u0308 Marsh')).toBe(true);
  expect(isTyped('zoë marsh', 'Zoë Marsh')).toBe(false);
  expect(isTyped('', 'Zoë Marsh')).toBe(false);
});

test('several names are parted by commas, each once', () => {
  expect(splitNames('Nana, Zé ,, Nana, x')).toEqual(['Nana', 'Zé']);
  expect(splitNames('a1,b2,c3,d4,e5,f6')).toHaveLength(5);
  expect(splitNames('')).toEqual([]);
});
