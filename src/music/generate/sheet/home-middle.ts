// Where a student's own notes lie best.

import type { Clef, WrittenRange } from '../../instrument/instrument.ts';
import { staffStep } from '../../pitch/pitch.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import { comfortableMiddle } from './choose-clef.ts';

/**
 * The middle of the few notes a sheet uses, in letter steps above C0. A pianist's first five are those from middle C up,
 * under the right hand (common practice, no source); for others it is half-way between range and staff.
 */
export function homeMiddle({ instrument, stage }: SheetFor, range: WrittenRange, clef: Clef): number {
  const isFirstHand = instrument.id === 'piano' && stage === 'beginner';
  return isFirstHand ? staffStep(range.low) + 2 : comfortableMiddle(range, clef);
}
