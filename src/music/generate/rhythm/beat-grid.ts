// The beats of a bar as a rhythm is built on them.

import type { Metre } from '../../rhythm/metre.ts';
import { ticksPerWhole } from './beat-figure.ts';

export interface Beat {
  /** Ticks from the bar's start. */
  readonly at: number;
  readonly length: number;
  readonly kind: 'simple' | 'compound';
  /** Whether the bar divides here: its start, its half, or a group of an irregular metre. */
  readonly isMain: boolean;
}

/** A bar's beats: crotchets (also in 2/2) or dotted crotchets, and both mixed in 5/8 and 7/8. */
export function beatGrid(metre: Metre): readonly Beat[] {
  const unit = ticksPerWhole / metre.unit;
  const crotchet = ticksPerWhole / 4;
  const isTriple = metre.groups.length === 3 && metre.groups.every((group) => group === 1);
  const beats: Beat[] = [];
  let at = 0;
  for (const group of metre.groups) {
    const length = group * unit;
    const isCompound = unit < crotchet && group === 3;
    const step = isCompound ? length : crotchet;
    for (let start = at; start < at + length; start += step) {
      const isMain = isCompound
        ? at === 0 || isHalf(metre, at, unit)
        : start === at && (at === 0 || !isTriple);
      beats.push({ at: start, length: step, kind: isCompound ? 'compound' : 'simple', isMain });
    }
    at += length;
  }
  // 3/4 and 9/8 divide nowhere but at the bar; each beat is as good a place as the next.
  return beats;
}

function isHalf(metre: Metre, at: number, unit: number): boolean {
  const isEven = new Set(metre.groups).size === 1;
  return !isEven || (metre.groups.length % 2 === 0 && at * 2 === metre.beats * unit);
}

/** Ticks in a full bar. */
export function barTicks(metre: Metre): number {
  return (metre.beats * ticksPerWhole) / metre.unit;
}

/**
 * How strong a place in the bar is: 0 its start, 1 another main division, 2 a beat, 3 half a beat (or a third in compound),
 * 4 anything finer.
 */
export function metricLevel(grid: readonly Beat[], at: number): number {
  if (at === 0) return 0;
  const beat = grid.findLast((b) => b.at <= at);
  if (beat === undefined) return 4;
  if (beat.at === at) return beat.isMain ? 1 : 2;
  const part = beat.kind === 'compound' ? beat.length / 3 : beat.length / 2;
  return (at - beat.at) % part === 0 ? 3 : 4;
}
