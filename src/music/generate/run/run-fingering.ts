// Fingerings over a passage. The number of a string stands only where the hand has changed to another one.

import { fingerLine } from '../../fingering/finger-line.ts';
import { type FingeringMarks, type FingeringOptions, fingeringMarks } from '../../fingering/fingering.ts';
import type { WrittenPitch } from '../../pitch/pitch.ts';
import type { SheetFor } from '../../shape/student-shape.ts';

const nothing: FingeringMarks = { fingering: null, string: null, fret: null };

/** One set of marks for each pitch. */
export function fingeringsFor(
  { instrument, stage }: SheetFor,
  pitches: readonly WrittenPitch[],
  options: Omit<FingeringOptions, 'stage'> = {},
): readonly FingeringMarks[] {
  let last: number | null = null;
  return fingerLine(instrument.id, pitches, { ...options, stage }).map((found) => {
    if (found === null) return nothing;
    const marks = fingeringMarks(found);
    const isNew = found.kind === 'fretted' && marks.string !== last;
    last = marks.string;
    return { fingering: marks.fingering, string: isNew ? marks.string : null, fret: null };
  });
}
