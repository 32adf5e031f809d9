// Metres: how long a bar is and how it divides. Source: standard theory (Gould, Behind Bars 2011, recalled; shared
// reference table of rhythm, see checks/theory).

import { assert } from '#core';
import { type Fraction, fraction } from '../fraction/fraction.ts';

/** Lower figures of a time signature. */
export type MetreUnit = 1 | 2 | 4 | 8 | 16;

export interface Metre {
  /** Upper figure. */
  readonly beats: number;
  /** Lower figure. */
  readonly unit: MetreUnit;
  /** How the bar divides first, in units: 4/4 is 2+2, 3/4 1+1+1, 6/8 3+3, 7/8 2+2+3. */
  readonly groups: readonly number[];
  /** Drawn as C or cut C instead of figures. */
  readonly symbol: 'common' | 'cut' | null;
}

/** The usual division of a bar. Fives are 3+2, sevens 2+2+3 (common practice; give `groups` for another). */
function usualGroups(beats: number, unit: MetreUnit): readonly number[] {
  if (unit >= 8 && beats % 3 === 0) return Array.from({ length: beats / 3 }, () => 3);
  if (beats === 4) return [2, 2];
  if (beats <= 3) return Array.from({ length: beats }, () => 1);
  if (beats % 3 === 0) return Array.from({ length: beats / 3 }, () => 3);
  if (beats === 5) return [3, 2];
  const twos = Math.floor(beats / 2) - (beats % 2);
  return [...Array.from({ length: twos }, () => 2), ...(beats % 2 === 1 ? [3] : [])];
}

/** A metre by its figures, with its own grouping where it is irregular. `createMetre(7, 8, { groups: [3, 2, 2] })` */
export function createMetre(
  beats: number,
  unit: MetreUnit,
  options: { readonly groups?: readonly number[]; readonly symbol?: 'common' | 'cut' } = {},
): Metre {
  assert(Number.isInteger(beats) && beats >= 1 && beats <= 32, `no metre: ${beats}/${unit}`);
  const groups = options.groups ?? usualGroups(beats, unit);
  const sum = groups.reduce((all, group) => all + group, 0);
  assert(sum === beats, `groups ${groups.join('+')} do not fill ${beats}/${unit}`);
  return { beats, unit, groups, symbol: options.symbol ?? null };
}

/** How long a full bar is, in semibreves. 6/8 → 3/4 */
export function barLength(metre: Metre): Fraction {
  return fraction(metre.beats, metre.unit);
}

/** `4/4`, `7/8` */
export function formatMetre(metre: Metre): string {
  return `${metre.beats}/${metre.unit}`;
}

/** Reads `3/4`, `6/8`, `7/8 (3+2+2)`; null when it is no metre. */
export function parseMetre(text: string): Metre | null {
  const match = /^(\d{1,2})\/(1|2|4|8|16)(?:\s*\((\d(?:\+\d)*)\))?$/.exec(text.trim());
  const unit = ([1, 2, 4, 8, 16] as const).find((u) => u === Number(match?.[2]));
  const beats = Number(match?.[1]);
  if (match === null || unit === undefined || beats < 1 || beats > 32) return null;
  if (match[3] === undefined) return createMetre(beats, unit);
  const groups = match[3].split('+').map(Number);
  const sum = groups.reduce((all, group) => all + group, 0);
  return sum === beats && !groups.includes(0) ? createMetre(beats, unit, { groups }) : null;
}
