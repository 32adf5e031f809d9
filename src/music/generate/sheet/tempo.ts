// Tempo marks in the beat of a metre.

import type { Metre } from '../../rhythm/metre.ts';
import { tempoMark } from '../../score/create-score.ts';
import type { TempoMark } from '../../score/score.ts';

/** A tempo in the metre's beat: crotchets, dotted crotchets, or quavers in 5/8 and 7/8. */
export function tempoIn(metre: Metre, perMinute: number, text: string | null = null): TempoMark {
  if (metre.unit < 8) {
    return tempoMark(perMinute, { type: 'quarter', dots: 0 }, text);
  }
  const isCompound = metre.groups.every((group) => group === 3);
  if (isCompound) return tempoMark(perMinute, { type: 'quarter', dots: 1 }, text);
  return tempoMark(perMinute * 2, { type: 'eighth', dots: 0 }, text);
}
