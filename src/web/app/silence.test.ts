import { expect, onTestFinished, test, vi } from 'vitest';
import { watchSilence } from './silence.ts';

test('a line that says nothing for too long is told of once, and not one that speaks', () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  let told = 0;
  const after = (milliseconds: number, callback: () => void) => {
    const timer = setTimeout(callback, milliseconds);
    return () => clearTimeout(timer);
  };
  const silence = watchSilence({ after, longestMilliseconds: 60_000 }, () => told++);
  for (let n = 0; n < 10; n++) {
    silence.heard();
    vi.advanceTimersByTime(25_000);
  }
  expect(told).toBe(0);
  vi.advanceTimersByTime(120_000);
  expect(told).toBe(1);
  silence.heard();
  silence.stop();
  vi.advanceTimersByTime(120_000);
  expect(told).toBe(1);
});
