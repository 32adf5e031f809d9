// One take from its plan: sound and exact truth.

import { createSeededRandom, present, type Random } from '#core';
import { backingNotes } from './backing.ts';
import { computeNote } from './computed.ts';
import { drawLine, type Line } from './line.ts';
import { measurePitch, measureStem } from './measure-stem.ts';
import {
  bendAt,
  crotchetToSeconds,
  type Performance,
  type PlayedNote,
  perform,
  swung,
} from './performance.ts';
import { activePower, addRoom, mix, power, roomNoise } from './room.ts';
import { bendSound, type SampledVoice } from './sampled.ts';
import type { TakePlan } from './take-list.ts';

export const pitchHop = 0.01;

export interface TruthNote {
  readonly onset: number;
  readonly offset: number;
  readonly midi: number;
  readonly cents: number;
  readonly db: number;
  /** Where it stands in the line, crotchets from bar 1, and its written length. */
  readonly at: number;
  readonly length: number;
  readonly closes: boolean;
  /** How far the player's start was meant to be from the grid, in seconds (positive is late). */
  readonly stray: number;
  readonly vibrato: { readonly rate: number; readonly extent: number } | null;
}

export interface TakeTruth {
  readonly id: string;
  readonly group: string;
  readonly split: string;
  readonly sound: string;
  readonly instrument: string;
  readonly sampleRate: number;
  readonly seconds: number;
  readonly context: TakeContext;
  readonly truth: {
    readonly offset: number;
    readonly tempo: number;
    readonly swing: number;
    readonly drift: number;
    readonly tuning: number;
    readonly bars: number;
    readonly notes: readonly TruthNote[];
    readonly f0: { readonly hop: number; readonly midi: readonly (number | null)[] };
  };
}

export interface TakeContext {
  readonly tempo: number;
  readonly metre: readonly [number, number];
  readonly swing: number;
  readonly countInBeats: number;
  readonly offsetS: number | null;
  readonly scale: { readonly tonic: string; readonly name: string };
  readonly chart: string;
  readonly instrument: string;
}

/** Renders a take. `bankAt` gives the sampled voice of a bank at a rate. */
export async function makeTake(
  plan: TakePlan,
  bankAt: (name: 'FluidR3Mono_GM' | 'MuseScore_General_Lite', sampleRate: number) => Promise<SampledVoice>,
): Promise<{ sound: Float32Array; truth: TakeTruth }> {
  const random = createSeededRandom(plan.seed * 31 + 7);
  const { sampleRate } = plan;
  const seconds = 11;
  const metreBeats = 4;
  const bars = Math.max(3, Math.min(12, Math.round((seconds * plan.tempo) / 60 / metreBeats)));
  const rhythm =
    plan.group === 'fast' || plan.group === 'hard'
      ? 'running'
      : plan.tempo < 110 && random.next() < 0.5
        ? 'lively'
        : 'plain';
  const line = drawLine(
    { low: plan.instrument.low, high: plan.instrument.high, bars, rhythm, leaps: plan.group === 'hard' },
    random,
  );
  const played = perform(line, plan.group, plan.tempo, random);
  const total = line.bars * line.metre[0];
  const place = (x: number) =>
    played.offset + crotchetToSeconds(swung(x, played.swing), plan.tempo, played.drift, total);
  const length = Math.ceil((place(total) + 0.8) * sampleRate);
  const voice = plan.sound === 'computed' ? null : await bankAt(plan.sound, sampleRate);
  const dry = new Float32Array(length);
  const stems = renderStems(plan, played, voice, random);
  for (const stem of stems) mix(dry, stem.sound, stem.at);
  const sound = plan.room === null ? dry : addRoom(dry, sampleRate, plan.room.seconds, plan.room.wet, random);
  const gain = setLevel(sound, plan.group, random);
  const playing = activePower(sound, sampleRate);
  const ratio =
    plan.group === 'noise'
      ? 20 + random.next() * 10
      : plan.group === 'hard'
        ? 28 + random.next() * 8
        : plan.group === 'quiet'
          ? 32 + random.next() * 6
          : 52;
  if (plan.group === 'bleed') {
    const backing = (await bankAt('FluidR3Mono_GM', sampleRate)).play(
      backingNotes(line, place, random),
      length / sampleRate,
    );
    const under = -(10 + random.next() * 10);
    mix(sound, backing, 0, Math.sqrt((playing / (power(backing) + 1e-20)) * 10 ** (under / 10)));
  }
  mix(sound, roomNoise(length, sampleRate, playing * 10 ** (-ratio / 10), random));
  return { sound, truth: truthOf(plan, line, played, stems, gain, length) };
}

interface Stem {
  readonly sound: Float32Array;
  /** Sample of the take where the stem starts. */
  readonly at: number;
  readonly note: PlayedNote;
}

const tail = 0.4;

function renderStems(
  plan: TakePlan,
  played: Performance,
  voice: SampledVoice | null,
  random: Random,
): readonly Stem[] {
  const { sampleRate, instrument } = plan;
  const sustained = instrument.make !== 'plucked' && instrument.make !== 'struck';
  return played.notes.map((note, i): Stem => {
    const next = played.notes[i + 1];
    const slurred = note.slurred && sustained;
    // a glide from the last pitch makes the slur of a voice or a bow
    const before = played.notes[i - 1];
    const glide =
      slurred && before !== undefined && instrument.make !== 'blown' && random.next() < 0.3
        ? Math.max(-200, Math.min(200, (before.midi - note.midi) * 100))
        : 0;
    const bend = (t: number) => bendAt(note, t) + (glide !== 0 && t < 0.03 ? glide * (1 - t / 0.03) ** 2 : 0);
    let sound: Float32Array;
    if (voice === null) sound = computeNote(instrument, { ...note, slurred }, bend, sampleRate, random);
    else {
      const whole = voice.note(
        instrument.program,
        note.midi,
        note.velocity,
        note.held + (slurred ? 0.12 : 0),
        tail,
      );
      // a slurred note starts where the sample already sounds
      sound = bendSound(slurred ? whole.subarray(Math.round(0.12 * sampleRate)) : whole, sampleRate, bend);
    }
    if (slurred) ramp(sound, 0, Math.round(0.012 * sampleRate), 0, 1);
    if (next !== undefined && instrument.make !== 'struck') {
      const cut = Math.round((next.start - note.start) * sampleRate);
      const over = Math.round((next.slurred && sustained ? 0.012 : 0.025) * sampleRate);
      if (cut < sound.length) {
        ramp(sound, cut, cut + over, 1, 0);
        sound.fill(0, Math.min(sound.length, cut + over));
      }
    }
    return { sound, at: Math.round(note.start * sampleRate), note };
  });
}

function ramp(sound: Float32Array, from: number, to: number, a: number, b: number): void {
  for (let i = from; i < to && i < sound.length; i++)
    sound[i] = (sound[i] ?? 0) * (a + ((b - a) * (i - from)) / (to - from));
}

/** Scales in place to the level of the group and returns the gain. */
function setLevel(sound: Float32Array, group: string, random: Random): number {
  let peak = 1e-9;
  for (const x of sound) peak = Math.max(peak, Math.abs(x));
  const wanted = group === 'quiet' ? -38 + random.next() * 8 : -12 + random.next() * 9;
  const gain = 10 ** (wanted / 20) / peak;
  for (let i = 0; i < sound.length; i++) sound[i] = (sound[i] ?? 0) * gain;
  return gain;
}

function truthOf(
  plan: TakePlan,
  line: Line,
  played: Performance,
  stems: readonly Stem[],
  gain: number,
  length: number,
): TakeTruth {
  const { sampleRate } = plan;
  const seconds = length / sampleRate;
  const f0: (number | null)[] = Array.from({ length: Math.floor(seconds / pitchHop) + 1 }, () => null);
  const total = line.bars * line.metre[0];
  const measured = stems.map((stem) => {
    const at = stem.at / sampleRate;
    const truth = measureStem(
      stem.sound,
      sampleRate,
      Math.min(stem.note.held, stem.sound.length / sampleRate),
    );
    return {
      stem,
      at,
      onset: at + truth.onset,
      offset: at + truth.offset,
      db: truth.db + 20 * Math.log10(gain),
    };
  });
  const notes = measured.map(({ stem, at, onset, offset, db }, i): TruthNote => {
    const { note } = stem;
    const written = present(line.notes[note.of], 'the written note');
    const until = Math.min(offset, measured[i + 1]?.onset ?? Number.POSITIVE_INFINITY);
    const pitch = measurePitch(stem.sound, sampleRate, note.midi + note.cents / 100, pitchHop);
    const steady: number[] = [];
    for (let k = Math.ceil(onset / pitchHop); k * pitchHop < until && k < f0.length; k++) {
      const t = k * pitchHop - at;
      const heard = pitch[Math.round(t / pitchHop)] ?? Number.NaN;
      f0[k] = Number.isNaN(heard) ? note.midi + bendAt(note, t) / 100 : heard;
      if (t > Math.min(note.scoopTime + 0.03, (until - at) / 2) && !Number.isNaN(heard)) steady.push(heard);
    }
    const centre = steady.length > 0 ? mean(steady) : note.midi + note.cents / 100;
    return {
      onset: round(onset, 4),
      offset: round(Math.max(until, onset + 0.02), 4),
      midi: note.midi,
      cents: round((centre - note.midi) * 100, 1),
      db: round(db, 1),
      at: written.at,
      length: written.length,
      closes: written.closes,
      stray: round(
        note.start -
          played.offset -
          crotchetToSeconds(swung(written.at, played.swing), plan.tempo, played.drift, total),
        4,
      ),
      vibrato:
        note.vibrato === null
          ? null
          : { rate: round(note.vibrato.rate, 2), extent: round(note.vibrato.extent, 1) },
    };
  });
  return {
    id: plan.id,
    group: plan.group,
    split: plan.split,
    sound: plan.sound,
    instrument: plan.instrument.id,
    sampleRate,
    seconds: round(seconds, 3),
    context: {
      tempo: plan.tempo,
      metre: line.metre,
      swing: played.swing,
      countInBeats: 0,
      // half of the takes know where bar 1 starts (recorded over a backing), half do not
      offsetS: plan.seed % 4 < 2 ? round(played.offset, 4) : null,
      scale: line.scale,
      chart: line.chart,
      instrument: plan.instrument.id,
    },
    truth: {
      offset: round(played.offset, 4),
      tempo: plan.tempo,
      swing: played.swing,
      drift: round(played.drift, 5),
      tuning: round(played.tuning, 1),
      bars: line.bars,
      notes,
      f0: { hop: pitchHop, midi: f0.map((m) => (m === null ? null : round(m, 3))) },
    },
  };
}

const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;
const round = (x: number, digits: number) => Math.round(x * 10 ** digits) / 10 ** digits;
