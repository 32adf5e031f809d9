import { describe, expect, it } from 'vitest';
import { createSeededRandom } from '#core';
import { createRealFft } from './fft.ts';
import { halveRate } from './half-rate.ts';
import { createNoiseFloor } from './noise-floor.ts';
import { removeOffset } from './remove-offset.ts';
import { createSampleReader } from './sample-reader.ts';
import { greatest, least, median, quantile } from './spans.ts';
import { createTailSubtraction } from './tail-subtraction.ts';
import { createHannWindow } from './window.ts';

const sine = (length: number, rate: number, hertz: number, size = 0.5): Float32Array =>
  Float32Array.from({ length }, (_, n) => size * Math.sin((2 * Math.PI * hertz * n) / rate));

const effective = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

describe('the transform', () => {
  const noise = (length: number): Float32Array => {
    const random = createSeededRandom(length);
    return Float32Array.from({ length }, () => random.next() - 0.5);
  };
  const flat = (length: number): Float64Array => new Float64Array(length).fill(1);

  for (const size of [16, 32, 64, 128, 1024])
    for (const filled of [size, size / 2])
      it(`gives the power of the discrete Fourier transform by its definition, ${filled} values in ${size}`, () => {
        const input = noise(filled);
        const power = new Float64Array(size / 2 + 1);
        createRealFft(size).power(input, 0, flat(filled), power);
        for (let k = 0; k <= size / 2; k += Math.max(1, size / 32)) {
          let r = 0;
          let i = 0;
          input.forEach((x, n) => {
            r += x * Math.cos((2 * Math.PI * k * n) / size);
            i -= x * Math.sin((2 * Math.PI * k * n) / size);
          });
          expect(power[k]).toBeCloseTo(r * r + i * i, 8);
        }
      });

  for (const size of [16, 64, 128, 1024])
    it(`gives the circular autocorrelation from the power spectrum (Wiener–Khinchin), length ${size}`, () => {
      const input = noise(size);
      const power = new Float64Array(size / 2 + 1);
      const fft = createRealFft(size);
      fft.power(input, 0, flat(size), power);
      const output = new Float64Array(size / 2 + 1);
      fft.autocorrelation(power, output);
      for (let lag = 0; lag <= size / 2; lag++) {
        const expected = input.reduce((sum, x, n) => sum + x * (input[(n + lag) % size] ?? 0), 0);
        expect(output[lag]).toBeCloseTo(expected, 9);
      }
    });

  it('takes what lies outside the samples for silence', () => {
    const input = noise(64);
    const padded = new Float32Array(64);
    padded.set(input.subarray(0, 40), 24);
    const fft = createRealFft(64);
    const [here, there] = [new Float64Array(33), new Float64Array(33)];
    fft.power(input.subarray(0, 40), -24, flat(64), here);
    fft.power(padded, 0, flat(64), there);
    expect(here).toEqual(there);
  });
});

describe('reading at the common rate', () => {
  for (const rate of [8000, 11_025, 22_050, 44_100, 44_056, 48_000, 96_000])
    it(`keeps a tone's level and time from ${rate} Hz`, () => {
      const reader = createSampleReader(sine(rate, rate, 1000), rate, 16_000);
      expect(Math.abs(reader.length - 16_000)).toBeLessThanOrEqual(1);
      const output = new Float32Array(1600);
      reader.read(8000, output);
      output.forEach((x, n) => {
        expect(Math.abs(x - 0.5 * Math.sin((2 * Math.PI * 1000 * (8000 + n)) / 16_000))).toBeLessThan(0.01);
      });
    });

  it('holds what lies above the new Nyquist frequency 50 dB down', () => {
    const output = new Float32Array(4000);
    createSampleReader(sine(44_100, 44_100, 11_000), 44_100, 16_000).read(4000, output);
    expect(20 * Math.log10(effective(output) / effective(sine(44_100, 44_100, 11_000)))).toBeLessThan(-50);
  });

  it('gives silence outside the recording, and for samples that are no number', () => {
    const samples = sine(4410, 44_100, 440);
    samples[2000] = Number.NaN;
    samples[2100] = Number.POSITIVE_INFINITY;
    const output = new Float32Array(4000);
    createSampleReader(samples, 44_100, 16_000).read(-1000, output);
    expect(output.every(Number.isFinite)).toBe(true);
    expect(output.slice(0, 900).every((x) => x === 0)).toBe(true);
    expect(output.slice(2700).every((x) => x === 0)).toBe(true);
    expect(Math.max(...output)).toBeLessThan(0.6);
  });
});

describe('filters', () => {
  it('halving passes 1 kHz and stops 6 kHz of 16', () => {
    const output = new Float32Array(4000);
    halveRate(sine(8000, 16_000, 1000), output);
    expect(effective(output)).toBeCloseTo(0.3536, 2);
    halveRate(sine(8000, 16_000, 6000), output);
    expect(effective(output)).toBeLessThan(0.003);
  });

  it('an offset is gone after half a second, and A0 (27.5 Hz) loses less than 1 dB', () => {
    const samples = sine(32_000, 16_000, 27.5).map((x) => x + 0.4);
    removeOffset(samples, 16_000);
    const settled = samples.slice(8000, 8000 + 16_000);
    expect(Math.abs(settled.reduce((sum, x) => sum + x, 0) / settled.length)).toBeLessThan(0.01);
    expect(20 * Math.log10(effective(settled) / 0.35355)).toBeGreaterThan(-1);
  });
});

describe('what is taken off a spectrum', () => {
  it('the floor of steady noise is its mean power within 1.5 dB, a tone now and then does not count', () => {
    const random = createSeededRandom(11);
    const floor = createNoiseFloor(65);
    for (let frame = 0; frame < 400; frame++) {
      const power = Float64Array.from({ length: 65 }, () => -2 * Math.log(1 - random.next()));
      if (frame % 3 === 0) power[20] = 10_000;
      floor.add(power);
    }
    for (const k of [5, 20, 40])
      expect(Math.abs(10 * Math.log10((floor.estimate()[k] ?? 0) / 2))).toBeLessThan(1.5);
  });

  it('a ringing tail goes, a new sound stays', () => {
    const tail = createTailSubtraction(2, {
      hopSeconds: 0.01,
      delay: 4,
      decaySeconds: 0.5,
      share: 0.9,
      least: 0.1,
    });
    const power = new Float64Array(2);
    for (let t = 0; t < 100; t++) {
      power[0] = t < 60 ? 1 : 0.5 * 10 ** (-0.12 * (t - 60));
      power[1] = t < 65 ? 0 : 0.3;
      tail.apply(power);
      if (t === 66) {
        expect(power[0]).toBeLessThan(0.02);
        expect(power[1]).toBeCloseTo(0.3, 3);
      }
    }
  });
});

it('spans: least, greatest, median, quantile; cut to the array', () => {
  const values = Float32Array.from([5, 1, 4, 2, 3]);
  expect(least(values, -3, 2)).toBe(1);
  expect(greatest(values, 2, 99)).toBe(4);
  expect(median(values, 0, 4)).toBe(3);
  expect(quantile(values, 0.5)).toBe(3);
  expect(median(values, 7, 9)).toBe(0);
});

it('the Hann window sums to half its length and its square to three eighths (Harris 1978, table 1)', () => {
  const window = createHannWindow(512);
  expect(window.reduce((sum, w) => sum + w, 0)).toBeCloseTo(256, 9);
  expect(window.reduce((sum, w) => sum + w * w, 0)).toBeCloseTo(192, 9);
});
