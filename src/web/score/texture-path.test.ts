import fc from 'fast-check';
import { expect, test } from 'vitest';
import { texturePath } from './texture-path.ts';

const box = fc.record({
  x: fc.integer({ min: -50, max: 2000 }),
  y: fc.integer({ min: -50, max: 2000 }),
  width: fc.double({ min: 0.5, max: 400, noNaN: true }),
  height: fc.double({ min: 0.5, max: 20, noNaN: true }),
});

/** The corners of strokes written as M x y L x y. */
const points = (path: string) =>
  [...path.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

test('strokes rise at 45 degrees, evenly apart, and stay inside the box', () => {
  fc.assert(
    fc.property(box, (one) => {
      const found = points(texturePath('hatched', one, 1));
      for (const [x, y] of found) {
        expect(x).toBeGreaterThanOrEqual(one.x - 0.01);
        expect(x).toBeLessThanOrEqual(one.x + one.width + 0.01);
        expect(y).toBeGreaterThanOrEqual(one.y - 0.01);
        expect(y).toBeLessThanOrEqual(one.y + one.height + 0.01);
      }
      expect(found).toHaveLength(2 * Math.ceil((one.width + one.height - 4) / 8 - 1e-9) || 0);
      for (let at = 0; at + 1 < found.length; at += 2) {
        const [[x1, y1], [x2, y2]] = [found[at] ?? [0, 0], found[at + 1] ?? [0, 0]];
        expect(x1 + y1).toBeCloseTo(x2 + y2, 1);
        expect(x2).toBeGreaterThanOrEqual(x1);
      }
    }),
  );
});

test('dots stand in a row inside the box; ruled lines divide it in three; plain has no marks', () => {
  const one = { x: 10, y: 20, width: 17, height: 12 };
  expect(texturePath('dotted', one, 1.5)).toBe(
    'M12.5 26a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0zM20.5 26a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0z',
  );
  expect(texturePath('ruled', one, 1)).toBe('M10 24h17M10 28h17');
  expect(texturePath('plain', one, 1)).toBe('');
});
