// Notes an instrument cannot play are a hum, a lorry or an undertone, unless they are heard as clearly as the others.

import type { ExpectedRange } from '../pitch-track/candidates.ts';
import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';

/** A key this far outside may be a note out of tune. */
const margin = 1;
/** What a note outside must reach to be believed: this sure, this long in seconds, at most so many dB below the usual note. */
const sure = 0.85;
const long = 0.08;
const soft = 6;

/** The notes without those that are unlikely and weak, and the share of the rest that lies outside the range. */
export function keepToRange(
  notes: readonly HeardNote[],
  range: ExpectedRange | null,
): { readonly notes: readonly HeardNote[]; readonly outside: number } {
  if (range === null) return { notes, outside: 0 };
  const isOutside = ({ midi }: HeardNote) => midi < range.low - margin || midi > range.high + margin;
  const usual = quantile(
    Float32Array.from(notes, (note) => note.db),
    0.5,
  );
  const kept = notes.filter(
    (note) =>
      !isOutside(note) ||
      (note.confidence >= sure && note.offset - note.onset >= long && note.db >= usual - soft),
  );
  return { notes: kept, outside: kept.filter(isOutside).length / Math.max(1, kept.length) };
}
