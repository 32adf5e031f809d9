import { expect, test } from 'vitest';
import { chooseOne, createSeededRandom, randomNormal } from './random.ts';

test('chooseOne draws once, and each as often as the others', () => {
  const [random, beside] = [createSeededRandom(3), createSeededRandom(3)];
  const times = new Map<string | null, number>();
  for (let n = 0; n < 3000; n++) {
    const chosen = chooseOne(random, ['a', null, 'c']);
    times.set(chosen, (times.get(chosen) ?? 0) + 1);
    beside.next();
  }
  expect(random.next()).toBe(beside.next());
  expect([...times.keys()]).toHaveLength(3);
  for (const count of times.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
});

test('there must be something to choose from', () => {
  expect(() => chooseOne(createSeededRandom(1), [])).toThrow('something to choose from');
});

// A normal deviate has mean 0 and variance 1, and lies within 1.96 nineteen times in twenty (usual tables, from memory).
test('normal deviates are spread as they should be', () => {
  const random = createSeededRandom(11);
  const drawn = Array.from({ length: 20_000 }, () => randomNormal(random));
  const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
  const variance = drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length;
  expect(Math.abs(mean)).toBeLessThan(0.03);
  expect(Math.abs(variance - 1)).toBeLessThan(0.04);
  expect(Math.abs(drawn.filter((x) => Math.abs(x) < 1.96).length / drawn.length - 0.95)).toBeLessThan(0.01);
});
