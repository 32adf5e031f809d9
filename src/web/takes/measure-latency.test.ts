import { expect, test } from 'vitest';
import { findLatency } from './measure-latency.ts';

const sampleRate = 48_000;
const times = [1, 1.4, 1.8, 2.2, 2.6];

/** A recording begun at 0.7 s of the clock in which clicks of 2 kHz sound `late` seconds after their times. */
function recordClicks(late: readonly number[], noise = 0): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(sampleRate * 3);
  for (let i = 0; i < samples.length; i++) samples[i] = noise * Math.sin(i * 12.9898) * Math.cos(i * 78.233);
  for (const [n, time] of times.entries()) {
    const from = Math.round((time - 0.7 + (late[n] ?? 0)) * sampleRate);
    for (let i = 0; i < 0.04 * sampleRate; i++)
      samples[from + i] =
        (samples[from + i] ?? 0) + 0.3 * Math.exp(-i / 400) * Math.sin((2 * Math.PI * 2000 * i) / sampleRate);
  }
  return samples;
}
const find = (samples: Float32Array<ArrayBuffer>) =>
  findLatency({ samples, sampleRate, startedAt: 0.7 }, times);

test.each([0.004, 0.05, 0.12, 0.25])('a delay of %d s is found within a millisecond', (late) => {
  expect(Math.abs((find(recordClicks([late, late, late, late, late])) ?? 9) - late)).toBeLessThan(0.001);
});

test('one click that was missed does not matter', () => {
  const samples = recordClicks([0.05, 0.05, 0.05, 0.05, 0.05]);
  samples.fill(0, Math.round(0.7 * sampleRate), Math.round(1 * sampleRate));
  expect(Math.abs((find(samples) ?? 9) - 0.05)).toBeLessThan(0.001);
});

test('clicks that do not agree, drown, or are not there give no delay', () => {
  expect(find(recordClicks([0.05, 0.09, 0.05, 0.13, 0.05]))).toBeNull();
  expect(find(recordClicks([0.05, 0.05, 0.05, 0.05, 0.05], 0.4))).toBeNull();
  expect(find(new Float32Array(sampleRate * 3))).toBeNull();
  expect(find(new Float32Array(0))).toBeNull();
});
