// The second sound, computed and unlike the first: partials with formants that brighten with loudness, breath and bow
// noise, body resonances, unsteady pitch; a plucked string as a waveguide (Karplus and Strong 1983, with the fractional
// delay of Jaffe and Smith 1983).

import { modulo, type Random, randomNormal } from '#core';
import { midiToFrequency } from '#music';
import type { TakeInstrument } from './instruments.data.ts';
import type { PlayedNote } from './performance.ts';

const tau = 2 * Math.PI;
const block = 32;

/** One note, mono, from its start until it has died away. `bend(t)` in cents. */
export function computeNote(
  instrument: TakeInstrument,
  note: PlayedNote,
  bend: (t: number) => number,
  sampleRate: number,
  random: Random,
): Float32Array {
  return instrument.make === 'plucked'
    ? pluck(instrument, note, bend, sampleRate, random)
    : instrument.make === 'struck'
      ? strike(instrument, note, bend, sampleRate, random)
      : sustain(instrument, note, bend, sampleRate, random);
}

function formantGain(instrument: TakeInstrument, hz: number): number {
  let gain = 0.25;
  for (const f of instrument.formants) gain += f.gain / (1 + ((hz - f.hz) / f.width) ** 2);
  return gain;
}

function sustain(
  instrument: TakeInstrument,
  note: PlayedNote,
  bend: (t: number) => number,
  sampleRate: number,
  random: Random,
): Float32Array {
  const release = instrument.release * (0.8 + random.next() * 0.5);
  // fast notes are tongued sooner, slurred ones are already sounding
  const attack = note.slurred
    ? 0.012
    : Math.min(instrument.attack * (0.7 + random.next() * 0.6), note.held * 0.4);
  const length = Math.ceil((note.held + release + 0.03) * sampleRate);
  const out = new Float32Array(length);
  const f0 = midiToFrequency(note.midi);
  const partials = Math.max(1, Math.min(48, Math.floor(Math.min(10000, sampleRate * 0.45) / f0)));
  const loud = (note.velocity / 100) ** 1.6;
  const bright = note.velocity / 100;
  const amp = new Float64Array(partials + 1);
  const phase = new Float64Array(partials + 1);
  let norm = 0;
  for (let h = 1; h <= partials; h++) {
    amp[h] =
      h ** ((instrument.slope + 4 * (bright - 0.8)) / 6.02) *
      (h % 2 === 0 ? instrument.even : 1) *
      formantGain(instrument, h * f0) *
      (0.8 + 0.4 * random.next());
    norm += (amp[h] ?? 0) ** 2;
    phase[h] = random.next() * tau;
  }
  for (let h = 1; h <= partials; h++) amp[h] = (amp[h] ?? 0) / Math.sqrt(norm);
  const now = new Float64Array(partials + 1);
  let wander = 0;
  let shimmer = 0;
  let smooth = 0;
  let breath = 0;
  const noiseGain = 10 ** (-instrument.noise / 20) * loud;
  const chiff = note.slurred ? 0 : 10 ** (-(instrument.noise - 10) / 20) * loud * (0.5 + random.next());
  const tremble = instrument.make === 'bowed' ? 0.06 : instrument.make === 'sung' ? 0.05 : 0.03;
  for (let at = 0; at < length; at += block) {
    const t = at / sampleRate;
    const on = Math.min(1, t / attack);
    const off = t > note.held ? Math.exp((-(t - note.held) / release) * 4.6) : 1;
    shimmer = shimmer * 0.995 + randomNormal(random) * 0.1 * tremble;
    const env = (1 - Math.cos(Math.PI * on)) * 0.5 * off * (1 - 0.12 * Math.min(1, t)) * (1 + shimmer);
    wander = wander * 0.998 + randomNormal(random) * 0.08;
    const cents = bend(t) + wander * (instrument.make === 'sung' ? 2 : 1);
    const step = (tau * f0 * 2 ** (cents / 1200)) / sampleRate;
    const dull = Math.max(0.02, env);
    for (let h = 1; h <= partials; h++) now[h] = (amp[h] ?? 0) * env * dull ** (0.12 * (h - 1)) * loud;
    const fresh = t < 0.05 ? chiff * Math.exp(-t / 0.012) : 0;
    for (let i = 0; i < block && at + i < length; i++) {
      let sum = 0;
      for (let h = 1; h <= partials; h++) {
        phase[h] = (phase[h] ?? 0) + step * h;
        sum += (now[h] ?? 0) * Math.sin(phase[h] ?? 0);
      }
      const white = random.next() * 2 - 1;
      smooth += 0.35 * (white - smooth);
      breath += 0.05 * (smooth - breath);
      out[at + i] = sum * 0.3 + (smooth - breath) * (noiseGain * env + fresh);
    }
  }
  return out;
}

function pluck(
  instrument: TakeInstrument,
  note: PlayedNote,
  bend: (t: number) => number,
  sampleRate: number,
  random: Random,
): Float32Array {
  const length = Math.ceil((note.held + instrument.release * 2) * sampleRate);
  const out = new Float32Array(length);
  const f0 = midiToFrequency(note.midi);
  const loud = (note.velocity / 100) ** 1.6;
  const size = Math.ceil(sampleRate / f0) * 2 + 8;
  const line = new Float32Array(size);
  const period = sampleRate / f0;
  const pickAt = 0.12 + random.next() * 0.25;
  let low = 0;
  const burst = new Float32Array(Math.ceil(period));
  const softness = 0.25 + 0.5 * (note.velocity / 127);
  for (let i = 0; i < burst.length; i++) {
    low += softness * (random.next() * 2 - 1 - low);
    burst[i] = low;
  }
  const bend0 = Math.round(pickAt * period);
  for (let i = 0; i < burst.length; i++) line[i] = (burst[i] ?? 0) - 0.9 * (burst[i - bend0] ?? 0);
  let write = burst.length;
  let last = 0;
  const halfLife = 1.2 * Math.min(3, 220 / f0) + 0.25; // seconds
  const keep = 0.5 ** (1 / (halfLife * f0));
  const blend = 0.5; // of the two taps of the string's own low-pass: half a sample of delay
  const bodies = instrument.formants.map((f) => resonator(f.hz, f.width, sampleRate));
  let step = period;
  for (let i = 0; i < length; i++) {
    if (i % block === 0) step = period / 2 ** (bend(i / sampleRate) / 1200) - blend;
    const back = write - step;
    const k = Math.floor(back);
    const f = back - k;
    // four-point Lagrange keeps the pitch true where linear interpolation would dull it
    const a = line[wrap(k - 1)] ?? 0;
    const b = line[wrap(k)] ?? 0;
    const c = line[wrap(k + 1)] ?? 0;
    const d = line[wrap(k + 2)] ?? 0;
    const value =
      (-a * f * (f - 1) * (f - 2)) / 6 +
      (b * (f + 1) * (f - 1) * (f - 2)) / 2 -
      (c * (f + 1) * f * (f - 2)) / 2 +
      (d * (f + 1) * f * (f - 1)) / 6;
    const damp = i / sampleRate > note.held ? 0.985 ** (220 / f0) : 1;
    const fed = (blend * last + (1 - blend) * value) * keep * damp;
    last = value;
    line[wrap(write)] = fed;
    write++;
    let body = 0;
    for (const [n, resonate] of bodies.entries())
      body += resonate(value) * (instrument.formants[n]?.gain ?? 0);
    out[i] = (value * 0.6 + body * 0.3) * loud;
  }
  fade(out, note.held, instrument.release, sampleRate);
  return out;

  function wrap(index: number): number {
    return modulo(index, size);
  }
}

function strike(
  instrument: TakeInstrument,
  note: PlayedNote,
  bend: (t: number) => number,
  sampleRate: number,
  random: Random,
): Float32Array {
  const length = Math.ceil((note.held + instrument.release * 2) * sampleRate);
  const out = new Float32Array(length);
  const f0 = midiToFrequency(note.midi);
  const loud = (note.velocity / 100) ** 1.6;
  const stiff = 0.0001 * 2 ** ((note.midi - 48) / 18);
  const partials = Math.max(1, Math.min(30, Math.floor(9000 / f0)));
  const level = new Float64Array(partials + 1);
  const fall = new Float64Array(partials + 1);
  const phase = new Float64Array(2 * partials + 2);
  const hammer = 0.13;
  for (let h = 1; h <= partials; h++) {
    level[h] =
      Math.abs(Math.sin(Math.PI * h * hammer)) *
      h ** ((instrument.slope + 5 * (note.velocity / 100 - 0.8)) / 6.02);
    level[h] = (level[h] ?? 0) * formantGain(instrument, h * f0);
    fall[h] = Math.exp(-1 / (sampleRate * ((2.2 * (262 / f0) ** 0.6) / (1 + 0.25 * (h - 1)))));
    phase[2 * h] = random.next() * tau;
    phase[2 * h + 1] = (phase[2 * h] ?? 0) + 0.4;
  }
  let smooth = 0;
  let ratio = 1;
  for (let i = 0; i < length; i++) {
    const t = i / sampleRate;
    if (i % block === 0) ratio = 2 ** (bend(t) / 1200);
    const on = Math.min(1, t / instrument.attack);
    let sum = 0;
    for (let h = 1; h <= partials; h++) {
      const step = (tau * h * f0 * ratio * Math.sqrt(1 + stiff * h * h)) / sampleRate;
      phase[2 * h] = (phase[2 * h] ?? 0) + step;
      phase[2 * h + 1] = (phase[2 * h + 1] ?? 0) + step * 1.0004;
      sum += (level[h] ?? 0) * (Math.sin(phase[2 * h] ?? 0) + 0.6 * Math.sin(phase[2 * h + 1] ?? 0));
      level[h] = (level[h] ?? 0) * (fall[h] ?? 1);
    }
    smooth += 0.2 * (random.next() * 2 - 1 - smooth);
    out[i] = (sum * 0.35 * on + smooth * Math.exp(-t / 0.015) * 0.15) * loud;
  }
  fade(out, note.held, instrument.release, sampleRate);
  return out;
}

function fade(out: Float32Array, held: number, release: number, sampleRate: number): void {
  for (let i = Math.floor(held * sampleRate); i < out.length; i++)
    out[i] = (out[i] ?? 0) * Math.exp((-(i / sampleRate - held) / release) * 4.6);
}

/** A two-pole resonator with unit gain at its centre. */
function resonator(hz: number, width: number, sampleRate: number): (x: number) => number {
  const r = Math.exp((-Math.PI * width) / sampleRate);
  const a1 = -2 * r * Math.cos((tau * hz) / sampleRate);
  const a2 = r * r;
  const gain = (1 - r) * Math.sqrt(1 - 2 * r * Math.cos((2 * tau * hz) / sampleRate) + r * r);
  let y1 = 0;
  let y2 = 0;
  return (x) => {
    const y = gain * x - a1 * y1 - a2 * y2;
    y2 = y1;
    y1 = y;
    return y;
  };
}
