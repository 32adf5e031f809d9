// ITU-R BS.1770-4 and EBU Tech 3341 v4, minimum requirement cases 1 to 6 (see README.md).

import { expect, test } from 'vitest';
import { kWeighting, truePeakDb } from '#sound';
import { loudnessOf } from './whole-track.ts';

const rate = 48_000;

/** A sine of stretches: level of the peak in dBFS and seconds. */
function sine(hertz: number, ...stretches: readonly (readonly [number, number])[]): Float32Array {
  const length = stretches.reduce((sum, [, seconds]) => sum + Math.round(seconds * rate), 0);
  const samples = new Float32Array(length);
  let at = 0;
  for (const [level, seconds] of stretches) {
    const until = at + Math.round(seconds * rate);
    for (; at < until; at++) samples[at] = 10 ** (level / 20) * Math.sin((2 * Math.PI * hertz * at) / rate);
  }
  return samples;
}
const stereo = (samples: Float32Array) => [samples, samples];

test('the filters at 48 kHz are the tables of BS.1770-4', () => {
  const [shelf, pass] = kWeighting(rate);
  const expected = [
    [shelf.b, [1.53512485958697, -2.69169618940638, 1.19839281085285]],
    [shelf.a, [-1.69065929318241, 0.73248077421585]],
    [pass.b, [1, -2, 1]],
    [pass.a, [-1.99004745483398, 0.99007225036621]],
  ] as const;
  for (const [ours, theirs] of expected)
    for (const [at, value] of theirs.entries()) expect(ours[at]).toBeCloseTo(value, 9);
});

test('a sine of 997 Hz at full scale in one front channel is -3.01 LKFS', () => {
  expect(loudnessOf([sine(997, [0, 10])], rate)).toBeCloseTo(-3.01, 1);
});

test.each([
  ['1', stereo(sine(1000, [-23, 20])), -23],
  ['2', stereo(sine(1000, [-33, 20])), -33],
  ['3', stereo(sine(1000, [-36, 10], [-23, 60], [-36, 10])), -23],
  ['4', stereo(sine(1000, [-72, 10], [-36, 10], [-23, 60], [-36, 10], [-72, 10])), -23],
  ['5', stereo(sine(1000, [-26, 20], [-20, 20.1], [-26, 20])), -23],
  ['6', [...stereo(sine(1000, [-28, 20])), sine(1000, [-24, 20]), ...stereo(sine(1000, [-30, 20]))], -23],
] as const)('EBU Tech 3341 case %s is within 0.1 LU', (_, channels, expected) => {
  const weights = channels.map((_, at) => (at < 3 ? 1 : 1.41)); // left, right, centre, then surround
  expect(Math.abs(loudnessOf(channels, rate, weights) - expected)).toBeLessThanOrEqual(0.1);
});

test('a quarter-rate sine with its peaks between the samples has its true peak found (Annex 2: within 0.4 dB under)', () => {
  const samples = Float32Array.from(
    { length: rate },
    (_, at) => 0.5 * Math.sin((Math.PI / 2) * at + Math.PI / 4),
  );
  expect(truePeakDb([samples])).toBeGreaterThan(-6.02 - 0.4);
  expect(truePeakDb([samples])).toBeLessThan(-6.02 + 0.2);
});
