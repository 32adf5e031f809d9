// Shapes a sheet to one student: what `fit` means for this stage, age and instrument.

import type { Stage } from '#core';
import { type Clef, type Instrument, rangeAtStage, type WrittenRange } from '../instrument/instrument.ts';
import { type Pitch, pitchToMidi, type WrittenPitch, written } from '../pitch/pitch.ts';
import { type StageShape, shapesByAge, shapesByStage } from './stage-shape.data.ts';

/** Whom a sheet is for. */
export interface SheetFor {
  readonly instrument: Instrument;
  readonly stage: Stage;
  /** In years; null where it is not known, which shapes nothing. */
  readonly age: number | null;
  /** Any 32-bit integer: the same spec, student and seed give the same sheet. */
  readonly seed: number;
}

export interface StudentShape extends StageShape {
  /** Clefs the student reads on the instrument, the usual one first. */
  readonly readsClefs: readonly Clef[];
  readonly breathes: boolean;
  readonly isKeyboard: boolean;
}

/** The whole number of beats that metronomes mark near a tempo. `metronomeMark(73.4)` → 72 */
export function metronomeMark(perMinute: number): number {
  const step = perMinute < 60 ? 2 : perMinute < 72 ? 3 : perMinute < 120 ? 4 : perMinute < 144 ? 6 : 8;
  return Math.round(perMinute / step) * step;
}

/** What `fit` stands for. A seven-year-old beginner gets fewer lines, a slower tempo and simpler rhythm. */
export function shapeFor({ instrument, stage, age }: SheetFor): StudentShape {
  const byStage = shapesByStage[stage];
  const byAge = age === null ? undefined : shapesByAge.find(({ upTo }) => age <= upTo);
  const most = byAge?.most;
  const slower = byAge?.slower ?? 1;
  const { tempo } = byStage;
  const readsClefs: readonly Clef[] = instrument.clefs;
  return {
    ...byStage,
    lines: Math.min(byStage.lines, most?.lines ?? byStage.lines),
    keys: Math.min(byStage.keys, most?.keys ?? byStage.keys),
    bars: Math.min(byStage.bars, most?.bars ?? byStage.bars),
    rhythmGrade: Math.min(byStage.rhythmGrade, most?.rhythmGrade ?? byStage.rhythmGrade),
    tempo: {
      scale: metronomeMark(tempo.scale * slower),
      reading: metronomeMark(tempo.reading * slower),
      line: metronomeMark(tempo.line * slower),
    },
    readsClefs: readsClefs.slice(0, byStage.clefs),
    breathes:
      instrument.family === 'woodwind' || instrument.family === 'brass' || instrument.family === 'voice',
    isKeyboard: instrument.id === 'piano',
  };
}

const at = (letter: Pitch['letter'], octave: number): WrittenPitch => written({ letter, alter: 0, octave });
const higher = (a: WrittenPitch, b: WrittenPitch) => (pitchToMidi(a) >= pitchToMidi(b) ? a : b);
const lower = (a: WrittenPitch, b: WrittenPitch) => (pitchToMidi(a) <= pitchToMidi(b) ? a : b);

/** Where a hand's staff of a keyboard instrument begins and ends, by stage (common practice, no source). */
const staffBounds: Readonly<
  Record<'right' | 'left', Readonly<Record<Stage, readonly [WrittenPitch, WrittenPitch]>>>
> = {
  right: {
    beginner: [at('C', 4), at('G', 5)],
    elementary: [at('C', 4), at('C', 6)],
    intermediate: [at('A', 3), at('F', 6)],
    advanced: [at('G', 3), at('C', 7)],
  },
  left: {
    beginner: [at('C', 3), at('C', 4)],
    elementary: [at('F', 2), at('E', 4)],
    intermediate: [at('C', 2), at('G', 4)],
    advanced: [at('A', 1), at('A', 4)],
  },
};

/** The written range one staff of the instrument is used in; on a keyboard, the part of it that belongs to a hand. */
export function staffRange(
  instrument: Instrument,
  stage: Stage,
  hand: 'right' | 'left' = 'right',
): WrittenRange {
  const range = rangeAtStage(instrument, stage);
  if (!instrument.clefs.some((clef) => clef === 'treble') || instrument.clefs.length < 2) return range;
  if (instrument.id === 'marimba')
    return { low: higher(range.low, at('G', 3)), high: lower(range.high, at('C', 7)) };
  if (instrument.id !== 'piano') return range;
  const [low, high] = staffBounds[hand][stage];
  return { low: higher(range.low, low), high: lower(range.high, high) };
}
