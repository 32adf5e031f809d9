import { expect, test } from 'vitest';
import { modulo } from './modulo.ts';

// D. Knuth, The Art of Computer Programming 1, 3rd ed., 1.2.4 (from memory): x mod y has the sign of y.
test.each([
  [5, 3, 2],
  [-2, 3, 1],
  [-3, 3, 0],
  [-0.5, 2, 1.5],
])('%d modulo %d is %d', (value, by, left) => {
  expect(modulo(value, by)).toBeCloseTo(left, 12);
});
