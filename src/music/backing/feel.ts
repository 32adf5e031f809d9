// Feels: how a rhythm section of bass, keys and drums plays a chart. The patterns are our own, of figures in common use
// (common practice, no source); the swing curve is published.

import { createMetre, type Metre } from '../rhythm/metre.ts';

export const feelIds = [
  'swing',
  'two-feel',
  'shuffle',
  'straight',
  'bossa',
  'son',
  'rumba',
  'waltz',
  'six-eight',
  'rock',
  'ballad',
] as const;

export type FeelId = (typeof feelIds)[number];

/** Ticks of a crotchet in every arrangement. */
export const ticksPerCrotchet = 480;

export interface Feel {
  readonly id: FeelId;
  /** The metre it is played in. */
  readonly metre: Metre;
  /** Ticks from one counted beat to the next: a crotchet, or a dotted one in 6/8. */
  readonly beatTicks: number;
  /** Whether the second of two quavers comes late. */
  readonly isSwung: boolean;
  /** Played with brushes and softer. */
  readonly isSoft: boolean;
}

const four = createMetre(4, 4);

const feelOf = (id: FeelId, rest: Partial<Feel> = {}): Feel => ({
  id,
  metre: four,
  beatTicks: ticksPerCrotchet,
  isSwung: false,
  isSoft: false,
  ...rest,
});

const feels: Readonly<Record<FeelId, Feel>> = {
  swing: feelOf('swing', { isSwung: true }),
  'two-feel': feelOf('two-feel', { isSwung: true, isSoft: true }),
  shuffle: feelOf('shuffle', { isSwung: true }),
  straight: feelOf('straight'),
  bossa: feelOf('bossa'),
  son: feelOf('son'),
  rumba: feelOf('rumba'),
  waltz: feelOf('waltz', { metre: createMetre(3, 4), isSwung: true }),
  'six-eight': feelOf('six-eight', { metre: createMetre(6, 8), beatTicks: 720 }),
  rock: feelOf('rock'),
  ballad: feelOf('ballad', { isSwung: true, isSoft: true }),
};

/** What is known of a feel. */
export const feelById = (id: FeelId): Feel => feels[id];

/** Ticks of one bar. */
export const barTicks = ({ metre }: Feel): number => (metre.beats * 4 * ticksPerCrotchet) / metre.unit;

/**
 * How much longer the first of two swung quavers is than the second, at a tempo in crotchets a minute: the short one
 * stays near 100 ms, so the ratio narrows as the tempo rises, from 3.5 down to 1 (Friberg & Sundström 2002, Music
 * Perception 19(3) 333-349; the constant short note as in the shared reference table of rhythm).
 *
 * `swingRatioAt(200)` → 2
 */
export function swingRatioAt(tempo: number): number {
  const shortNote = 100;
  return Math.max(1, Math.min(3.5, 60_000 / tempo / shortNote - 1));
}

/** Where the second of two quavers starts, in ticks after the beat. A ratio of 2 → 320 of 480. */
export function offBeatTick(ratio: number): number {
  return Math.round((ticksPerCrotchet * ratio) / (1 + ratio));
}
