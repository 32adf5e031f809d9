import { beforeEach, expect, test, vi } from 'vitest';

let readings: typeof import('./readings.ts');
beforeEach(async () => {
  vi.resetModules();
  readings = await import('./readings.ts');
});

test('a line that opens after a change tells whether anything was read before it', () => {
  const { heedTold, noteReading } = readings;
  expect(heedTold(7)).toBe(false); // nothing was read yet
  expect(noteReading('7')).toBe(true);
  expect(heedTold(7)).toBe(false);
  expect(heedTold(8)).toBe(true);
});

test('one old reading among new ones is enough', () => {
  const { heedTold, noteReading } = readings;
  for (const count of ['4', '3', '5']) expect(noteReading(count)).toBe(true);
  expect(heedTold(5)).toBe(true);
});

test('what was begun before a change that the line has told of is no reading; what lacks a count is left alone', () => {
  const { heedTold, noteReading } = readings;
  heedTold(5);
  expect(noteReading('4')).toBe(false);
  expect(noteReading('5')).toBe(true);
  expect(noteReading(null)).toBe(true);
  expect(heedTold(undefined)).toBe(false);
});
