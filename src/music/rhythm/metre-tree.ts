// A bar as a tree of spans: bar, halves, groups, beats, and halves of beats. What may be written as one note hangs on it.

import { assert } from '#core';
import { type Fraction, fraction } from '../fraction/fraction.ts';
import type { Metre } from './metre.ts';

/** Ticks in a semibreve: a dotted hemidemisemiquaver is three, so every value outside tuplets is whole. */
const ticksPerWhole = 128;

/** A stretch of the bar in ticks, with the stretches it divides into; none below a hemidemisemiquaver. */
export interface Span {
  readonly start: number;
  readonly end: number;
  readonly parts: readonly Span[];
}

/** Ticks of a duration or offset that has no tuplet in it. */
export function toTicks(time: Fraction): number {
  const ticks = (time.n * ticksPerWhole) / time.d;
  assert(Number.isInteger(ticks), `${time.n}/${time.d} of a semibreve lies inside a tuplet`);
  return ticks;
}

/** The duration of so many ticks. */
export function fromTicks(ticks: number): Fraction {
  return fraction(ticks, ticksPerWhole);
}

/** Whether groups, not units, are the beats: compound metres, and irregular ones in quavers or shorter. */
function beatsAreGroups(metre: Metre): boolean {
  return metre.groups.every((group) => group === 3) || metre.unit >= 8;
}

/** The beats of the bar in units. 4/4 → 1 1 1 1; 6/8 → 3 3; 7/8 → 2 2 3; 5/4 → 1 1 1 1 1 */
export function beatUnits(metre: Metre): readonly number[] {
  return beatsAreGroups(metre) ? metre.groups : Array.from({ length: metre.beats }, () => 1);
}

/** Equal parts of a span. */
function divide(start: number, end: number, count: number, split: (from: number, to: number) => Span): Span {
  const length = (end - start) / count;
  const parts = Array.from({ length: count }, (_, i) => split(start + i * length, start + (i + 1) * length));
  return { start, end, parts: count === 1 ? (parts[0]?.parts ?? []) : parts };
}

/** A span that halves down to the tick. */
function halves(start: number, end: number): Span {
  return end - start < 2 ? { start, end, parts: [] } : divide(start, end, 2, halves);
}

const treesByMetre = new Map<string, Span>();

/** The bar of a metre. Four equal groups pair into half-bars (12/8); 4/4 has them already. */
export function metreTree(metre: Metre): Span {
  const key = `${metre.groups.join('+')}/${metre.unit}`;
  const known = treesByMetre.get(key);
  if (known !== undefined) return known;
  const unit = ticksPerWhole / metre.unit;
  let at = 0;
  const groups = metre.groups.map((units) => {
    const start = at;
    at += units * unit;
    return divide(start, at, units, halves);
  });
  const isPaired = groups.length === 4 && new Set(metre.groups).size === 1;
  const parts = isPaired ? [pair(groups.slice(0, 2)), pair(groups.slice(2))] : groups;
  const tree = { start: 0, end: at, parts: parts.length === 1 ? (parts[0]?.parts ?? []) : parts };
  treesByMetre.set(key, tree);
  return tree;
}

function pair(parts: readonly Span[]): Span {
  const [first, second] = parts;
  assert(first !== undefined && second !== undefined, 'two groups make a half-bar');
  return { start: first.start, end: second.end, parts };
}
