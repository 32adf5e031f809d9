// Where a student's own notes lie best.

import type { Clef, WrittenRange } from '../../instrument/instrument.ts';
import { staffStep } from '../../pitch/pitch.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import { comfortableMiddle } from './choose-clef.ts';

/**
 * The middle of the few notes a sheet uses, in letter steps above C0: of a pianist's first five, else half-way between range
 * and staff.
 */
export function homeMiddle(student: SheetFor, range: WrittenRange, clef: Clef): number {
  return isFirstHand(student) ? firstHandMiddle(range) : comfortableMiddle(range, clef);
}

/** A pianist whose hand lies on five notes and stays there. */
export const isFirstHand = ({ instrument, stage }: SheetFor): boolean =>
  instrument.id === 'piano' && stage === 'beginner';

/** A pianist's first five are those from middle C up, under the right hand. Common practice, no source. */
export const firstHandMiddle = (range: WrittenRange): number => staffStep(range.low) + 2;

/** The middle of a range, in letter steps above C0. */
export const rangeMiddle = (range: WrittenRange): number =>
  (staffStep(range.low) + staffStep(range.high)) / 2;
