import { expect, test } from 'vitest';
import { chooseOne, createSeededRandom } from './random.ts';

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
