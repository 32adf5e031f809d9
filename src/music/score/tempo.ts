// What a tempo mark means in crotchets.

import { valueDuration } from '../duration/note-value.ts';
import type { TempoMark } from './score.ts';

/** Crotchets in a minute of a marked tempo. Dotted crotchet = 60 → 90 */
export function crotchetsPerMinute({ unit, perMinute }: TempoMark): number {
  const { n, d } = valueDuration(unit);
  return (perMinute * 4 * n) / d;
}
