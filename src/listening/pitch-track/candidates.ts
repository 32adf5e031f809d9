// What pitches a moment may have: the peaks of the autocorrelation in frames of 32, 64 and 128 ms, weighed where more
// than one frame length can judge, and tuned on the partials themselves. Several candidates per moment, each with a
// strength, as in Mauch & Dixon 2014 ("pYIN"); the choice between them is the tracker's.

import { frequencyToMidi, midiToFrequency } from '#music';
import { createPeriodicity, frameBins, frameLength, type Periodicity } from './periodicity.ts';

/** How many candidates are kept per moment. */
export const candidateCount = 6;

/** The same sound at falling rates; sample n of each lies at n / rate seconds. */
export interface Octaves {
  readonly rates: readonly number[];
  readonly samples: readonly Float32Array[];
}

/** The candidates of one moment, strongest first; unused places have strength 0. */
export interface Candidates {
  /** Fractional MIDI number (69 is 440 Hz). */
  readonly midi: Float64Array;
  /** Share of the sound that repeats at this pitch, 0 … about 1. */
  readonly strength: Float64Array;
  /** Mean square of the moment without the noise floor. */
  power: number;
  /** Mean square of what is new in it: without the tail of earlier sound. */
  fresh: number;
  /** The power spectrum of its shortest frame, as it is. */
  spectrum: Float64Array;
}

/** Lowest and highest frequency looked for, in hertz: A0 less a quarter-tone, C8 and a little. */
const lowestHz = 26.7;
const highestHz = 4400;
/** The window's share of the period that a lag needs to be believed. */
const fewestPeriods = 2.2;
/** The advantage of an octave higher, so that a period wins over its multiples. */
export const octaveCost = 0.04;
const weakest = 0.25;
/** Rooms of ordinary size. Our own choice. */
const tailModel = { decaySeconds: 0.6, share: 0.9, least: 0.1 };
/** A frame's own length must have gone by before its sound counts as past: in frames of that length. */
const tailDelays: readonly number[] = [4, 5, 4];
/** The longest frames are taken at every other moment only. */
const momentsPerFrame: readonly number[] = [1, 1, 2];
const momentSeconds = 0.01;
/** Frequencies closer than this ratio (0.15 semitones) are one pitch. */
const samePitch = 2 ** (0.15 / 12);
/** What a pitch outside the instrument's range loses. */
const outsideCost = 0.12;
/** Sound below this share of the lowest note's frequency is turned down. */
const belowRange = 0.8;
/** What a pitch loses whose odd partials, or those that are no multiple of three, are missing: it is an undertone. */
const hollowCost = 0.25;
/** The share of amplitude that those partials hold at least in a real tone. */
const fullShare = 0.14;

/** The pitches to expect, as fractional MIDI numbers: others are heard too, but must be clearer. */
export interface ExpectedRange {
  readonly low: number;
  readonly high: number;
}

/** Finds candidates; owns the buffers it overwrites at every moment. */
export function createCandidateFinder(
  levelCount: number,
  range: ExpectedRange | null,
): {
  readonly find: (octaves: Octaves, seconds: number, floors: readonly (Float64Array | null)[]) => Candidates;
} {
  const levels: readonly Periodicity[] = Array.from({ length: levelCount }, (_, l) =>
    createPeriodicity({
      ...tailModel,
      delay: tailDelays[l] ?? 4,
      hopSeconds: momentSeconds * (momentsPerFrame[l] ?? 1),
    }),
  );
  const found: Candidates = {
    midi: new Float64Array(candidateCount),
    strength: new Float64Array(candidateCount),
    power: 0,
    fresh: 0,
    spectrum: new Float64Array(frameBins),
  };
  const foundHertz = new Float64Array(candidateCount);
  const pool = new Float64Array(64);
  let moment = 0;
  const lowestUsed = range === null ? 0 : midiToFrequency(range.low) * belowRange;

  function find(octaves: Octaves, seconds: number, floors: readonly (Float64Array | null)[]): Candidates {
    let pooled = 0;
    for (let l = 0; l < levelCount; l++) {
      const level = levels[l];
      const samples = octaves.samples[l];
      const rate = octaves.rates[l];
      if (level === undefined || samples === undefined || rate === undefined) break;
      if (moment % (momentsPerFrame[l] ?? 1) === 0) {
        const lowestBin = (lowestUsed * 2 * frameLength) / rate;
        const power = level.analyse(samples, Math.round(seconds * rate), floors[l] ?? null, lowestBin);
        if (l === 0) {
          found.power = power;
          found.fresh = level.fresh;
          found.spectrum = level.whole;
        }
      }
      pooled = collectPeaks(level, rate, pool, pooled, l);
    }
    moment++;
    found.midi.fill(0);
    found.strength.fill(0);
    foundHertz.fill(0);
    for (let i = 0; i < pooled; i++) keep(pool[i] ?? 0, octaves.rates);
    return found;
  }

  /** Judges a frequency on every frame length that can, and keeps it if it is among the best. */
  function keep(rough: number, rates: readonly number[]): void {
    if (isFound(rough)) return;
    let weightSum = 0;
    let sum = 0;
    let bestWeight = 0;
    let bestLevel = 0;
    for (let l = 0; l < levelCount; l++) {
      const rate = rates[l] ?? 1;
      const periods = (rough * frameLength) / rate;
      const weight = levelWeight(periods, rough, rate);
      if (weight === 0) continue;
      const level = levels[l];
      if (level === undefined) continue;
      sum += weight * peakNear(level.correlation, rate / rough);
      weightSum += weight;
      if (weight >= bestWeight) {
        bestWeight = weight;
        bestLevel = l;
      }
    }
    if (weightSum === 0) return;
    // Hollowness and range only take away: what cannot enter the list need not be tuned.
    const most = sum / weightSum + octaveCost * (Math.log2(rough / 440) + 0.05);
    if (most <= Math.max(weakest, found.strength[candidateCount - 1] ?? 0)) return;
    const level = levels[bestLevel];
    const rate = rates[bestLevel] ?? 1;
    const hertz = level === undefined ? rough : tuneOnPartials(level.power, rate, rough);
    const hollow = level === undefined ? 0 : hollowness(level.power, rate, hertz);
    const strength = sum / weightSum + octaveCost * Math.log2(hertz / 440) - hollowCost * hollow;
    const midi = frequencyToMidi(hertz);
    const outside = range === null ? 0 : Math.max(0, range.low - midi, midi - range.high);
    const expected = strength - (outside > 1 ? outsideCost + 0.008 * outside : 0);
    if (expected < weakest) return;
    insert(midi, hertz, Math.min(expected, 1.2));
  }

  function isFound(hertz: number): boolean {
    for (let i = 0; i < candidateCount; i++) {
      const other = foundHertz[i] ?? 0;
      if (hertz < other * samePitch && other < hertz * samePitch) return true;
    }
    return false;
  }

  function insert(midi: number, hertz: number, strength: number): void {
    let place = candidateCount - 1;
    for (let i = 0; i < candidateCount; i++) {
      const other = found.strength[i] ?? 0;
      if (other > 0 && Math.abs((found.midi[i] ?? 0) - midi) < 0.4) {
        if (strength <= other) return;
        place = i;
        break;
      }
    }
    if ((found.strength[place] ?? 0) >= strength) return;
    for (; place > 0 && (found.strength[place - 1] ?? 0) < strength; place--) {
      found.strength[place] = found.strength[place - 1] ?? 0;
      found.midi[place] = found.midi[place - 1] ?? 0;
      foundHertz[place] = foundHertz[place - 1] ?? 0;
    }
    found.strength[place] = strength;
    found.midi[place] = midi;
    foundHertz[place] = hertz;
  }

  return { find };
}

/** How far a frame with this many periods is to be believed about them: too few blur, too many average over notes. */
function levelWeight(periods: number, hertz: number, rate: number): number {
  if (hertz > rate / 4) return 0;
  if (periods < fewestPeriods) return 0;
  if (periods < 5) return 0.15 + (0.85 * (periods - fewestPeriods)) / (5 - fewestPeriods);
  if (periods < 14) return 1;
  if (rate > 10_000) return 1;
  return periods > 40 ? 0.05 : 1 - (0.95 * (periods - 14)) / 26;
}

/** Adds the frequencies of the correlation's peaks to `pool`; gives the new count. */
function collectPeaks(
  level: Periodicity,
  rate: number,
  pool: Float64Array,
  count: number,
  index: number,
): number {
  const { correlation } = level;
  const shortest = Math.max(2, Math.floor(rate / Math.min(highestHz, rate / 4)));
  const longest = Math.min(Math.floor(frameLength / fewestPeriods), Math.ceil(rate / lowestHz));
  // A longer frame need only look where the shorter ones cannot.
  const from = index === 0 ? shortest : Math.floor(frameLength / 14);
  let pooled = count;
  for (let lag = from; lag <= longest && pooled < pool.length; lag++) {
    const here = correlation[lag] ?? 0;
    if (here < weakest || here < (correlation[lag - 1] ?? 0) || here <= (correlation[lag + 1] ?? 0)) continue;
    const bend = (correlation[lag - 1] ?? 0) + (correlation[lag + 1] ?? 0) - 2 * here;
    const shift = bend < 0 ? (0.5 * ((correlation[lag - 1] ?? 0) - (correlation[lag + 1] ?? 0))) / bend : 0;
    pool[pooled++] = rate / (lag + shift);
  }
  return pooled;
}

/** The highest correlation within about half a semitone of a lag, between the samples too. */
function peakNear(correlation: Float64Array, lag: number): number {
  const from = Math.max(1, Math.floor(lag * 0.975));
  const to = Math.ceil(lag * 1.025);
  let best = from;
  for (let n = from; n <= to; n++) if ((correlation[n] ?? 0) > (correlation[best] ?? 0)) best = n;
  const here = correlation[best] ?? 0;
  const before = correlation[best - 1] ?? 0;
  const after = correlation[best + 1] ?? 0;
  const bend = before + after - 2 * here;
  return bend < 0 && here >= before && here >= after ? here - (before - after) ** 2 / (8 * bend) : here;
}

/** 0 … 1: how far a pitch is only an undertone (a half or a third) of what sounds; partials 1 to 6 are looked at. */
function hollowness(power: Float64Array, rate: number, hertz: number): number {
  const bin = rate / (2 * frameLength);
  let total = 0;
  let even = 0;
  let thirds = 0;
  for (let h = 1; h <= 6; h++) {
    const around = Math.round((hertz * h) / bin);
    if (around >= frameBins - 2) break;
    const peak = Math.max(power[around - 1] ?? 0, power[around] ?? 0, power[around + 1] ?? 0);
    const amplitude = Math.sqrt(peak);
    total += amplitude;
    if (h % 2 === 0) even += amplitude;
    if (h % 3 === 0) thirds += amplitude;
  }
  if (total === 0) return 0;
  const least = Math.min(total - even, total - thirds) / total;
  return Math.max(0, 1 - least / fullShare);
}

/**
 * The fundamental that the first partials agree on: each partial's peak by a parabola through log power (exact for a
 * Gaussian window, within 1 % of a bin for Hann), weighed by its power and by how finely it tells.
 */
function tuneOnPartials(power: Float64Array, rate: number, rough: number): number {
  const bin = rate / (2 * frameLength);
  let sum = 0;
  let weights = 0;
  for (let h = 1; h <= 6; h++) {
    const around = (rough * h) / bin;
    const reach = Math.max(1, Math.min(3, around * 0.03));
    const from = Math.max(1, Math.round(around - reach));
    const to = Math.min(frameBins - 2, Math.round(around + reach));
    if (to >= frameBins - 2) break;
    let peak = from;
    for (let k = from; k <= to; k++) if ((power[k] ?? 0) > (power[peak] ?? 0)) peak = k;
    const before = power[peak - 1] ?? 0;
    const here = power[peak] ?? 0;
    const after = power[peak + 1] ?? 0;
    if (before <= 0 || after <= 0 || here < before || here < after) continue;
    const a = Math.log(before);
    const b = Math.log(here);
    const c = Math.log(after);
    const bend = a + c - 2 * b;
    if (bend >= 0) continue;
    const place = peak + (0.5 * (a - c)) / bend;
    const weight = Math.sqrt(here) * h;
    sum += (weight * place * bin) / h;
    weights += weight;
  }
  if (weights === 0) return rough;
  const tuned = sum / weights;
  // A partial that belongs to something else must not pull the pitch away.
  return Math.abs(tuned / rough - 1) < 0.03 ? tuned : rough;
}
