// Recordings that hold no take, or are no recordings: a sentence, or a report that says what could not be heard.

import { closeSync, ftruncateSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test, vi } from 'vitest';
import { createSeededRandom, type Random } from '#core';
import { formatWav } from '#sound';
import { listen } from './listen.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

interface Report {
  readonly notes: readonly { readonly onset: number; readonly midi: number }[];
  readonly problems: readonly { readonly kind: string; readonly message: string }[];
  readonly evidence: Readonly<Record<string, { readonly heard: boolean; readonly reason?: string }>>;
}

async function run(path: string): Promise<{ status: number; said: string }> {
  const said: string[] = [];
  const hear = (line: unknown) => void said.push(String(line));
  vi.spyOn(console, 'error').mockImplementation(hear);
  vi.spyOn(console, 'log').mockImplementation(hear);
  return { status: await listen([path]), said: said.join('\n') };
}

function write(name: string, bytes: Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

async function report(name: string, channels: readonly Float32Array[], rate: number): Promise<Report> {
  const { status, said } = await run(write(name, formatWav(channels, rate)));
  expect(status, said).toBe(0);
  return JSON.parse(said) as Report;
}

const keys = [60, 64, 67, 72, 71, 67, 65, 62];

/** Crotchets at 120 to the minute, from half a second on; `above` moves them by semitones. */
function tune(rate: number, size = 0.15, above = 0): Float32Array {
  const samples = new Float32Array(rate * 5);
  for (const [k, key] of keys.entries())
    for (let i = 0; i < rate * 0.42; i++) {
      const t = i / rate;
      const hz = 440 * 2 ** ((key + above - 69) / 12);
      const level = size * Math.min(1, t / 0.01, (0.42 - t) / 0.02);
      const at = Math.round((0.5 + k * 0.5) * rate) + i;
      for (let h = 1; h <= 6 && h * hz < rate / 2.2; h++)
        samples[at] = (samples[at] ?? 0) + (level * Math.sin(2 * Math.PI * hz * h * t)) / h;
    }
  return samples;
}

function noise(length: number, size: number, random: Random): Float32Array {
  return Float32Array.from({ length }, () => size * (random.next() + random.next() + random.next() - 1.5));
}

/**
 * Someone talking: syllables of a gliding voice (80 to 200 Hz, moving by up to half an octave within a syllable) through two
 * moving resonances, hisses between them, pauses after every few. Made by ear; no source.
 */
function talk(rate: number, seconds: number, random: Random): Float32Array {
  const samples = new Float32Array(rate * seconds);
  const between = (low: number, high: number) => low + (high - low) * random.next();
  let at = Math.round(0.3 * rate);
  let phase = 0;
  while (at < samples.length) {
    const voiced = Math.round(between(0.09, 0.2) * rate);
    const [from, to] = [between(90, 190), between(80, 170)];
    const formants = [between(300, 800), between(900, 2200)] as const;
    const state = [0, 0, 0, 0];
    for (let i = 0; i < voiced && at + i < samples.length; i++) {
      const share = i / voiced;
      phase += (from * (to / from) ** share * (1 + 0.02 * (random.next() - 0.5))) / rate;
      const pulse = phase >= 1 ? 1 : 0;
      phase -= pulse;
      let sum = 0;
      for (const [f, hz] of formants.entries()) {
        const r = Math.exp((-Math.PI * 90) / rate);
        const [a, b] = [state[2 * f] ?? 0, state[2 * f + 1] ?? 0];
        const y = pulse + 2 * r * Math.cos((2 * Math.PI * hz * (1 + 0.2 * share)) / rate) * a - r * r * b;
        state[2 * f] = y;
        state[2 * f + 1] = a;
        sum += y;
      }
      samples[at + i] = 0.05 * sum * Math.sin(Math.PI * share);
    }
    at += voiced;
    const hiss = Math.round(between(0.03, 0.12) * rate);
    for (let i = 0; i < hiss && at + i < samples.length; i++)
      samples[at + i] = 0.04 * (random.next() - 0.5) * Math.sin((Math.PI * i) / hiss);
    at += hiss + (random.next() < 0.2 ? Math.round(between(0.2, 0.5) * rate) : 0);
  }
  return samples;
}

const kinds = (heard: Report) => heard.problems.map((problem) => problem.kind);

describe('a report that says what could not be heard, and no notes made up', () => {
  const random = createSeededRandom(23);
  test.each([
    ['silence', new Float32Array(44_100 * 4), 'TooQuiet'],
    ['noise', noise(44_100 * 6, 0.1, random), 'MostlyNoise'],
    ['talking', talk(44_100, 10, random), 'SpeechLike'],
    ['a sliver', tune(44_100).subarray(22_050, 24_000), 'TooShort'],
  ] as const)('%s', async (name, samples, kind) => {
    const heard = await report(`${name}.wav`, [samples], 44_100);
    expect(heard.notes).toEqual([]);
    expect(kinds(heard)).toEqual([kind]);
    for (const row of Object.values(heard.evidence)) expect(row.heard).toBe(false);
  });

  test('two voices', async () => {
    const other = tune(44_100, 0.12, -9);
    const both = tune(44_100).map((x, n) => x + (other[n] ?? 0));
    const heard = await report('two.wav', [both], 44_100);
    expect(kinds(heard)).toContain('MoreThanOneVoice');
    for (const row of Object.values(heard.evidence)) expect(row.heard).toBe(false);
  });

  test('cut off at full scale: notes are heard, tone and dynamics are not told', async () => {
    const heard = await report(
      'clipped.wav',
      [tune(44_100).map((x) => Math.max(-1, Math.min(1, 9 * x)))],
      44_100,
    );
    expect(heard.notes.map((note) => note.midi)).toEqual(keys);
    expect(kinds(heard)).toEqual(['Clipped']);
    expect(heard.evidence['tone']?.reason).toMatch(/cut off/);
    expect(heard.evidence['dynamics']?.reason).toMatch(/cut off/);
  });
});

describe('the same notes at any rate and on any number of channels', () => {
  test.each([
    ['8 kHz', 8000, 1],
    ['96 kHz', 96_000, 1],
    ['stereo', 44_100, 2],
    ['six channels', 22_050, 6],
  ] as const)('%s', async (name, rate, channels) => {
    const samples = tune(rate);
    const heard = await report(
      `${name}.wav`,
      Array.from({ length: channels }, () => samples),
      rate,
    );
    expect(heard.notes.map((note) => note.midi)).toEqual(keys);
    for (const [k, note] of heard.notes.entries())
      expect(Math.abs(note.onset - 0.5 - k * 0.5)).toBeLessThan(0.03);
    expect(kinds(heard)).toEqual([]);
  });
});

describe('a sentence and status 2 for files that are no recordings', () => {
  const whole = formatWav([tune(44_100)], 44_100);
  const random = createSeededRandom(5);
  const bytes = (length: number) => Uint8Array.from({ length }, () => Math.floor(random.next() * 256));
  const damaged = (at: number, ...values: readonly number[]) => {
    const copy = whole.slice(0, 4000);
    copy.set(values, at);
    return copy;
  };
  test.each([
    ['no byte', new Uint8Array(0), /too few for a WAV file/],
    ['no sound', formatWav([new Float32Array(0)], 44_100), /no sound/],
    ['cut short', whole.slice(0, 100_000), /is cut off/],
    ['cut inside its head', whole.slice(0, 30), /cut off|no format/],
    ['random bytes', bytes(5000), /is not a WAV file/],
    [
      'random bytes after a true head',
      Uint8Array.from([...whole.slice(0, 12), ...bytes(3000)]),
      /no format|no sound|form|cut off|says it has/,
    ],
    ['no channel', damaged(22, 0, 0), /0 channels/],
    ['a rate of nothing', damaged(24, 0, 0, 0, 0), /0 samples a second/],
    ['a frame of no bytes', damaged(32, 0, 0), /contradicts itself/],
    ['a form nobody reads', damaged(20, 85, 0), /form that is not read/],
  ] as const)('%s', async (name, file, message) => {
    const { status, said } = await run(write(`${name}.wav`, file));
    expect(said).toMatch(message);
    expect(status).toBe(2);
  });

  test('an hour: nothing of it is read but its head', async () => {
    const head = whole.slice(0, 44);
    const size = 44_100 * 2 * 3600;
    new DataView(head.buffer).setUint32(40, size, true);
    const path = join(folder, 'hour.wav');
    const file = openSync(path, 'w');
    writeSync(file, head);
    ftruncateSync(file, 44 + size);
    closeSync(file);
    const { status, said } = await run(path);
    expect(said).toMatch(/lasts 60 minutes; takes of up to 15 minutes/);
    expect(status).toBe(2);
  });
});

test('floats beyond all measure, and numbers that are none, are heard as a recording that is cut off', async () => {
  const samples = tune(44_100);
  const data = new DataView(new ArrayBuffer(44 + samples.length * 4));
  const text = (at: number, word: string) =>
    [...word].forEach((letter, i) => {
      data.setUint8(at + i, letter.charCodeAt(0));
    });
  text(0, 'RIFF');
  data.setUint32(4, data.byteLength - 8, true);
  text(8, 'WAVEfmt ');
  data.setUint32(16, 16, true);
  data.setUint16(20, 3, true);
  data.setUint16(22, 1, true);
  data.setUint32(24, 44_100, true);
  data.setUint32(28, 176_400, true);
  data.setUint16(32, 4, true);
  data.setUint16(34, 32, true);
  text(36, 'data');
  data.setUint32(40, samples.length * 4, true);
  samples.forEach((x, i) => {
    data.setFloat32(44 + 4 * i, i % 7919 === 0 ? Number.NaN : x * 1e30, true);
  });
  const { status, said } = await run(write('floats.wav', new Uint8Array(data.buffer)));
  expect(status).toBe(0);
  const heard = JSON.parse(said) as Report;
  expect(kinds(heard)).toContain('Clipped');
  for (const note of heard.notes) expect(keys).toContain(note.midi);
});
