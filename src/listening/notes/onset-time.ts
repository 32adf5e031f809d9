// When a note begins to be heard: where its level has come within 16 dB of the level it rises to, or, where nothing
// rises (legato), where the attack or else the pitch says so.

import { greatest } from '../signal/spans.ts';
import type { Moments } from './moments.ts';
import type { Segment } from './segment.ts';

/** dB below the level reached, at which a note counts as begun. */
const audible = 16;
/** A rise of less than this many dB dates nothing. */
const leastRise = 6;
/** Moments within which the level is reached. */
const arrival = 15;
/** Moments before the segment in which its sound may already have begun. */
const lead = 5;

/** The moment a segment begins; `tied` when it follows another without a gap. */
export function findOnset(segment: Segment, tied: boolean, moments: Moments): number {
  const { level, attack } = moments;
  const { from } = segment;
  const end = Math.min(segment.to, from + arrival);
  const top = greatest(level, from, end);
  const first = Math.max(0, from - lead);
  let bottom = from;
  for (let t = first; t <= Math.min(end, from + (tied ? 1 : 5)); t++)
    if ((level[t] ?? 0) < (level[bottom] ?? 0)) bottom = t;
  if (top - (level[bottom] ?? 0) < leastRise) {
    let at = from;
    for (let t = Math.max(0, from - 3); t <= from + 3; t++) if ((attack[t] ?? 0) > (attack[at] ?? 0)) at = t;
    return at;
  }
  let t = bottom;
  while (t < end && (level[t] ?? 0) < top - audible) t++;
  return tied ? Math.max(first, Math.min(from + 3, t)) : t;
}
