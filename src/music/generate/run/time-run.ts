// Gives the notes of a study their values: a cell of values that goes round, the last group filled up, and a long last
// note that ends a bar.

import type { TupletPlace } from '../../score/score.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { ticksPerWhole } from '../rhythm/beat-figure.ts';
import type { Run, RunNote } from './run-notes.ts';

/** One beat or more of values, in ticks. */
export interface Cell {
  readonly lengths: readonly number[];
  readonly isTriplet: boolean;
}

const crotchet = ticksPerWhole / 4;
const cell = (...lengths: readonly number[]): Cell => ({ lengths, isTriplet: false });

export const evenCells = {
  semibreve: cell(192),
  minim: cell(96),
  crotchet: cell(48),
  quaver: cell(24, 24),
  triplet: { lengths: [16, 16, 16], isTriplet: true },
  semiquaver: cell(12, 12, 12, 12),
} as const satisfies Record<string, Cell>;

/** Quavers by threes, for compound metres. */
export const compoundCell = cell(24, 24, 24);

/** The same passage in six turned rhythms (common practice, no source). */
export const turnedCells: readonly Cell[] = [
  cell(36, 12),
  cell(12, 36),
  cell(24, 12, 12),
  cell(12, 12, 24),
  { lengths: [16, 16, 16], isTriplet: true },
  cell(12, 12, 12, 12),
];

/** A cell in dotted rhythm, long first or short first, over the same pairs. */
export function dottedCell(value: keyof typeof evenCells, isLongFirst: boolean): Cell {
  const { lengths } = evenCells[value];
  const pair = (lengths[0] ?? crotchet) * 2;
  if (value === 'triplet') return isLongFirst ? cell(36, 12) : cell(12, 36);
  const [long, short] = [(pair * 3) / 4, pair / 4];
  return isLongFirst ? cell(long, short) : cell(short, long);
}

export interface TimedNote {
  readonly slot: Slot;
  readonly note: RunNote;
}

/** Steps from home that fill a group before it, by way of its neighbours. 2 → 0 1; 3 → 0 2 1; 4 → 0 1 2 1 */
function fillers(count: number): readonly number[] {
  if (count <= 1) return [0].slice(0, count);
  const half = Math.floor(count / 2);
  const up = Array.from({ length: half }, (_, i) => i);
  const peak = count % 2 === 0 ? [half] : [half + 1, half];
  const down = Array.from({ length: half - 1 }, (_, i) => half - 1 - i);
  return [...up, ...peak, ...down];
}

/**
 * A run in time. `bar` is the bar's length in ticks; the result fills whole bars. A last group that stays open is filled
 * with home and its neighbours on the side the run comes from.
 */
export function timeRun(
  { notes, last }: Run,
  { lengths, isTriplet }: Cell,
  bar: number,
): readonly TimedNote[] {
  const open = notes.length % lengths.length;
  const side = (notes.at(-1)?.step ?? 0) >= last.step ? 1 : -1;
  const steps = [...notes, last].map(({ step }) => step);
  const [lowest, highest] = [Math.min(...steps), Math.max(...steps)];
  const fill = (count: number) =>
    fillers(count).map((away): RunNote => {
      const step = Math.min(highest, Math.max(lowest, last.step + side * away));
      return { step, isFalling: last.isFalling };
    });
  const all = [...notes, ...fill(open === 0 ? 0 : lengths.length - open)];
  const group = lengths.reduce((a, b) => a + b, 0);
  const total = (all.length / lengths.length) * group;
  const value = lengths[0] ?? crotchet;
  const room = bar - (total % bar);
  // A last note no longer than the others is no end: home once more, and the end in a bar of its own.
  if (room < bar && room < Math.max(2 * value, crotchet) && room % group === 0)
    all.push(...fill((room / group) * lengths.length));
  let at = 0;
  const timed = all.map((note, i): TimedNote => {
    const place = i % lengths.length;
    const length = lengths[place] ?? crotchet;
    const slot: Slot = { at, length, isRest: false, tuplet: isTriplet ? tripletAt(place) : null };
    at += length;
    return { slot, note };
  });
  const end = at % bar === 0 ? bar : bar - (at % bar);
  return [...timed, { slot: { at, length: end, isRest: false, tuplet: null }, note: last }];
}

function tripletAt(place: number): TupletPlace {
  return { actual: 3, normal: 2, at: place === 0 ? 'start' : place === 2 ? 'end' : 'middle' };
}
