// A typed tune laid on a chart's bars in the student's key and octave.

import { err, ok, type Result } from '#core';
import { type Fraction, minus } from '../../fraction/fraction.ts';
import { isInRange, type WrittenRange } from '../../instrument/instrument.ts';
import { transposePitch } from '../../pitch/interval.ts';
import { type Pitch, staffStep, type WrittenPitch, written } from '../../pitch/pitch.ts';
import { badTuneBar, type Tune, tuneLength } from '../../spec/melody-text.ts';
import type { StudentChart } from './student-chart.ts';

export interface PlacedTuneNote {
  readonly pitch: WrittenPitch | null;
  readonly length: Fraction;
  readonly isTied: boolean;
}

export interface PlacedTune {
  /** Notes before the first full bar; empty for none. */
  readonly pickup: readonly PlacedTuneNote[];
  readonly bars: readonly (readonly PlacedTuneNote[])[];
}

/** Why a tune does not go with its chart; null when it does. */
export function tuneFault(tune: Tune, bars: number, length: Fraction): string | null {
  const bad = badTuneBar(tune, length);
  if (bad !== null) return `Bar ${bad + 1} of the tune is not as long as the metre says.`;
  const first = tune[0];
  const hasPickup = first !== undefined && minus(length, tuneLength(first)).n > 0 && tune.length > 1;
  const full = tune.length - (hasPickup ? 1 : 0);
  if (full === bars) return null;
  return `The tune has ${full} bars${hasPickup ? ' and a pickup' : ''}, the chart ${bars}.`;
}

/** The tune in the octave nearest to `middle`, in letter steps above C0; an error when no octave of the range holds it. */
export function placeTune(
  tune: Tune,
  length: Fraction,
  moved: StudentChart['moved'],
  range: WrittenRange,
  middle: number,
): Result<PlacedTune, 'outside'> {
  const pitches = tune.flat().flatMap(({ pitch }) => (pitch === null ? [] : [pitch]));
  const at = (pitch: Pitch, octaves: number): WrittenPitch => {
    const there = transposePitch(pitch, moved);
    return written({ ...there, octave: there.octave + octaves });
  };
  let best: number | null = null;
  let lowest = Number.POSITIVE_INFINITY;
  for (let octaves = -4; octaves <= 4; octaves++) {
    const there = pitches.map((pitch) => at(pitch, octaves));
    if (!there.every((pitch) => isInRange(range, pitch))) continue;
    const average = there.reduce((sum, pitch) => sum + staffStep(pitch), 0) / Math.max(1, there.length);
    const cost = Math.abs(average - middle) + Math.abs(octaves) / 100;
    if (cost < lowest) [best, lowest] = [octaves, cost];
  }
  if (best === null) return err('outside');
  const octaves = best;
  const place = (bar: Tune[number]): readonly PlacedTuneNote[] =>
    bar.map(({ pitch, length: held, isTied }) => ({
      pitch: pitch === null ? null : at(pitch, octaves),
      length: held,
      isTied,
    }));
  const [first = [], ...rest] = tune;
  const isPickup = minus(length, tuneLength(first)).n > 0 && tune.length > 1;
  const full = (isPickup ? rest : tune).map((bar) => {
    const open = minus(length, tuneLength(bar));
    const placed = place(bar);
    return open.n > 0 ? [...placed, { pitch: null, length: open, isTied: false }] : placed;
  });
  return ok({ pickup: isPickup ? place(first) : [], bars: full });
}
