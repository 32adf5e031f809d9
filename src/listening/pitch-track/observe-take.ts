// The whole take as a row of moments: candidates of pitch, level and the rise of its spectrum. Read in stretches, so
// that an hour needs no more working memory than a minute; what is kept is about 70 bytes per 10 ms.

import { present } from '#core';
import { createSpectralFlux, fluxFrame } from '../onset/spectral-flux.ts';
import { createFrameSpectrum } from '../signal/frame-spectrum.ts';
import { halveRate } from '../signal/half-rate.ts';
import { createNoiseFloor } from '../signal/noise-floor.ts';
import { removeOffset } from '../signal/remove-offset.ts';
import type { SampleReader } from '../signal/sample-reader.ts';
import { candidateCount, createCandidateFinder, type ExpectedRange, type Octaves } from './candidates.ts';
import type { CandidateTrack } from './choose-path.ts';
import { fftSize, frameBins, frameLength } from './periodicity.ts';

/** Samples per second at which everything is heard. */
export const commonRate = 16_000;
/** Seconds from one moment to the next. */
export const hop = 0.01;
/** Rises per moment. */
export const risesPerMoment = 2;

/** What was observed at every moment of a take. */
export interface Observation extends CandidateTrack {
  /** Number of moments; moment t lies at t · hop seconds. */
  readonly count: number;
  /** Level without the steady noise, dB relative to full scale (a full-scale sine is -3). */
  readonly level: Float32Array;
  /** Level of what is new at the moment: without the tail of earlier sound either, dB relative to full scale. */
  readonly fresh: Float32Array;
  /** Spectral rise in dB per band, `risesPerMoment` values per moment, 5 ms apart. */
  readonly rise: Float32Array;
  /** Level of the steady noise, dB relative to full scale, in the stretch of each moment. */
  readonly noise: Float32Array;
}

const stretchSeconds = 40;
const marginSeconds = 0.25;

/** From this lowest note on (Bb2) frames of 64 ms hold periods enough, and the longest are left out. */
const shortFramesFrom = 46;

/** Observes the take that `reader` reads at `commonRate`; `range` holds the pitches to expect. */
export function observeTake(reader: SampleReader, range: ExpectedRange | null): Observation {
  const levelCount = range !== null && range.low >= shortFramesFrom ? 2 : 3;
  const count = Math.floor(reader.length / (commonRate * hop)) + 1;
  const observation = {
    count,
    midi: new Float32Array(count * candidateCount),
    strength: new Float32Array(count * candidateCount),
    level: new Float32Array(count),
    fresh: new Float32Array(count),
    rise: new Float32Array(count * risesPerMoment),
    noise: new Float32Array(count),
  };
  const finder = createCandidateFinder(levelCount, range);
  const perStretch = Math.round(stretchSeconds / hop);
  const flux = createSpectralFlux(commonRate);
  const between = createFrameSpectrum(fluxFrame);
  // One buffer at each rate for all stretches: an hour must not leave a heap of them behind.
  const longest = Math.round((Math.min(count, perStretch) * hop + 2 * marginSeconds) * commonRate);
  const buffers = Array.from(
    { length: levelCount },
    (_, l) => new Float32Array(Math.floor(longest / 2 ** l)),
  );
  for (let first = 0; first < count; first += perStretch) {
    const last = Math.min(count, first + perStretch);
    const start = Math.round((first * hop - marginSeconds) * commonRate);
    const length = Math.round(((last - first) * hop + 2 * marginSeconds) * commonRate);
    const octaves = cutOctaves(buffers, length);
    const samples = present(octaves.samples[0], 'the first octave');
    reader.read(start, samples);
    removeOffset(samples, commonRate);
    for (const [l, below] of octaves.samples.entries()) {
      const above = octaves.samples[l - 1];
      if (above !== undefined) halveRate(above, below);
    }
    const floors = measureFloors(octaves);
    const noise = floorLevel(floors[0] ?? null);
    flux.setFloor(floors[0] ?? null, 1e-5);
    for (let t = first; t < last; t++) {
      const seconds = t * hop - start / commonRate;
      const found = finder.find(octaves, seconds, floors);
      observation.midi.set(found.midi, t * candidateCount);
      observation.strength.set(found.strength, t * candidateCount);
      observation.level[t] = 10 * Math.log10(found.power + 1e-12);
      observation.fresh[t] = 10 * Math.log10(found.fresh + 1e-12);
      observation.noise[t] = noise;
      // The moment's own spectrum is there already; one more lies half-way to the next.
      observation.rise[t * risesPerMoment] = flux.next(found.spectrum, fftSize / fluxFrame);
      between.analyse(samples, Math.round((seconds + hop / risesPerMoment) * commonRate) - fluxFrame / 2);
      observation.rise[t * risesPerMoment + 1] = flux.next(between.power, 1);
    }
  }
  return observation;
}

/** The first `length` samples of the buffers, each half as long as the one before. */
function cutOctaves(buffers: readonly Float32Array[], length: number): Octaves {
  return {
    rates: buffers.map((_, l) => commonRate / 2 ** l),
    samples: buffers.map((buffer, l) => buffer.subarray(0, Math.floor(length / 2 ** l))),
  };
}

/** The steady noise at every rate of this stretch, from a frame every 80 ms. */
function measureFloors(octaves: Octaves): readonly Float64Array[] {
  const { power, analyse } = createFrameSpectrum(frameLength, fftSize);
  return octaves.samples.map((samples, l) => {
    const floor = createNoiseFloor(frameBins);
    const step = Math.round(0.08 * (octaves.rates[l] ?? commonRate));
    for (let centre = frameLength; centre < samples.length - frameLength; centre += step) {
      analyse(samples, centre - frameLength / 2);
      floor.add(power);
    }
    return floor.estimate();
  });
}

function floorLevel(floor: Float64Array | null): number {
  if (floor === null) return -120;
  const total = floor.reduce((sum, value) => sum + 2 * value, 0);
  const windowPower = (3 / 8) * frameLength;
  return 10 * Math.log10(total / (2 * frameLength * windowPower) + 1e-12);
}
