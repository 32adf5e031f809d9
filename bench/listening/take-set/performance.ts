// How a line is played: places in time, lengths, loudness and the bend of every note, drawn per group. What is drawn here
// is the truth the takes are judged by, apart from what the sound itself adds (see measure-stem.ts).

import { present, type Random, randomInteger, randomNormal } from '#core';
import type { Line } from './line.ts';

export const groups = [
  'clean',
  'vibrato',
  'jitter',
  'noise',
  'bleed',
  'legato',
  'quiet',
  'fast',
  'hard',
] as const;
export type Group = (typeof groups)[number];

export interface PlayedNote {
  /** Seconds from the file's start, where the player starts the note. */
  readonly start: number;
  /** Seconds the player holds it. */
  readonly held: number;
  readonly midi: number;
  /** 0 to 127. */
  readonly velocity: number;
  /** Whether it follows the last one without a new attack. */
  readonly slurred: boolean;
  /** Cents above the tempered pitch over the whole note. */
  readonly cents: number;
  /** Cents below at the start, gliding up within `scoopTime` seconds. */
  readonly scoop: number;
  readonly scoopTime: number;
  readonly vibrato: { readonly rate: number; readonly extent: number; readonly delay: number } | null;
  /** Index in the line. */
  readonly of: number;
}

export interface Performance {
  readonly tempo: number;
  readonly swing: number;
  /** Seconds from the file's start to the first bar line. */
  readonly offset: number;
  /** Cents the whole instrument is off 440 Hz. */
  readonly tuning: number;
  /** Tempo at the end over tempo at the start. */
  readonly drift: number;
  readonly notes: readonly PlayedNote[];
}

/** Where crotchet `at` falls in crotchets once quavers swing: the off-beat quaver moves to share `swing` of the beat. */
export function swung(at: number, swing: number): number {
  const beat = Math.floor(at + 1e-9);
  const within = at - beat;
  return beat + (within <= 0.5 ? within * 2 * swing : swing + (within - 0.5) * 2 * (1 - swing));
}

/** Seconds from the first bar line to crotchet `x` when the tempo changes evenly to `drift` times itself over `total`. */
export function crotchetToSeconds(x: number, tempo: number, drift: number, total: number): number {
  const k = (drift - 1) / total;
  return Math.abs(k) < 1e-9 ? (60 / tempo) * x : (60 / tempo / k) * Math.log(1 + k * x);
}

/** Draws how the line is played. */
export function perform(line: Line, group: Group, tempo: number, random: Random): Performance {
  const lively = line.notes.some((note) => Math.abs(note.length * 4 - Math.round(note.length * 4)) > 0.01);
  const swing =
    line.metre[0] === 4 && !lively && group !== 'fast' && group !== 'hard' && random.next() < 0.35
      ? present([0.58, 0.6, 0.625, 0.667][randomInteger(random, 0, 3)], 'a ratio')
      : 0.5;
  const learner = group === 'jitter';
  const offset = 0.4 + random.next() * 1.2;
  const tuning = randomNormal(random) * (learner ? 10 : 6);
  const drift = learner && random.next() < 0.5 ? 1 + randomNormal(random) * 0.03 : 1;
  const total = line.bars * line.metre[0];
  const jitterMs = group === 'hard' ? 8 : learner ? 14 + random.next() * 14 : 4;
  const pull = learner ? randomNormal(random) * 12 : 0;
  const attached = group === 'legato' || (group === 'vibrato' && random.next() < 0.3);
  const loudness = group === 'quiet' ? 45 : 84;
  const place = (x: number) => offset + crotchetToSeconds(swung(x, swing), tempo, drift, total);
  const starts = line.notes.map((note) => {
    const meant = place(note.at);
    const room = place(note.at + note.length) - meant;
    const stray = (randomNormal(random) * jitterMs + pull) / 1000;
    return meant + Math.max(-room / 3, Math.min(room / 3, stray));
  });
  const notes = line.notes.map((note, i): PlayedNote => {
    const start = present(starts[i], 'a start');
    const next = starts[i + 1];
    const end = place(note.at + note.length);
    const follows =
      next !== undefined && Math.abs(present(line.notes[i + 1], 'a note').at - note.at - note.length) < 1e-6;
    const room = (follows ? present(next, 'the next start') : end) - start;
    const before = line.notes[i - 1];
    const same = before?.midi === note.midi;
    const joined = before !== undefined && Math.abs(before.at + before.length - note.at) < 1e-6;
    const slurred = attached && joined && !same && random.next() < 0.85;
    const share = attached ? 1 : group === 'fast' ? 0.86 + random.next() * 0.1 : 0.72 + random.next() * 0.25;
    const repeats = line.notes[i + 1]?.midi === note.midi;
    const vibrato =
      (group === 'vibrato' || group === 'hard') && room > 0.28 && random.next() < 0.8
        ? {
            rate: 4.5 + random.next() * 2,
            extent: 15 + random.next() * 45,
            delay: 0.08 + random.next() * 0.12,
          }
        : null;
    const scoops = (group === 'vibrato' || group === 'hard') && room > 0.2 && random.next() < 0.35;
    return {
      start,
      held: Math.max(0.05, room * (repeats ? Math.min(share, 0.88) : share)),
      midi: note.midi,
      velocity: Math.max(
        20,
        Math.min(
          120,
          loudness +
            randomNormal(random) * (learner || group === 'hard' ? 14 : 8) +
            14 * Math.sin(note.at * 0.4),
        ),
      ),
      slurred,
      cents: tuning + randomNormal(random) * (learner ? 12 : 4),
      scoop: scoops ? 40 + random.next() * 110 : 0,
      scoopTime: scoops ? Math.min(room / 3, 0.06 + random.next() * 0.08) : 0,
      vibrato,
      of: i,
    };
  });
  return { tempo, swing, offset, tuning, drift, notes };
}

/** Cents above the tempered pitch `t` seconds into the note: deviation, scoop and vibrato. */
export function bendAt(note: PlayedNote, t: number): number {
  let cents = note.cents;
  if (note.scoop > 0 && t < note.scoopTime) {
    const left = 1 - Math.max(0, t) / note.scoopTime;
    cents -= note.scoop * left * left;
  }
  if (note.vibrato !== null && t > note.vibrato.delay) {
    const grown = Math.min(1, (t - note.vibrato.delay) / 0.15);
    cents +=
      note.vibrato.extent * grown * Math.sin(2 * Math.PI * note.vibrato.rate * (t - note.vibrato.delay));
  }
  return cents;
}
