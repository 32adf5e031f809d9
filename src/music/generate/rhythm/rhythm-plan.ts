// What the rhythm fields of a spec ask for, line by line.

import type { Metre } from '../../rhythm/metre.ts';
import type { StudentShape } from '../../shape/student-shape.ts';
import type { RhythmSpec } from '../../spec/material-spec.ts';
import type { RhythmOptions } from './rhythm-palette.ts';

type RhythmFields = Pick<RhythmSpec, 'grade' | 'values' | 'rests' | 'ties' | 'syncopation' | 'harder'>;

/** Grade of one line of several: where lines get harder, the first is a grade or two below the sheet's own. */
export function gradeOfLine(grade: number, line: number, lines: number, harder: boolean): number {
  if (!harder || lines < 2) return grade;
  const first = Math.max(1, grade - (grade <= 3 ? 1 : 2));
  return first + Math.round(((grade - first) * line) / (lines - 1));
}

/** The options of one line. Rests come in at grade 2, ties at 5 (common practice, no source). */
export function rhythmOptions(
  fields: RhythmFields,
  shape: StudentShape,
  metre: Metre,
  bars: number,
  place: { readonly line: number; readonly lines: number },
): RhythmOptions {
  const top = fields.grade === 'fit' ? shape.rhythmGrade : fields.grade;
  const grade = gradeOfLine(top, place.line, place.lines, fields.harder);
  const values = fields.values === 'fit' ? null : fields.values;
  return {
    metre,
    bars,
    grade,
    values,
    rests: fields.rests === 'fit' ? (grade < 2 ? 0 : 0.12) : fields.rests,
    ties: fields.ties === 'none' ? 0 : fields.ties === 'some' ? 0.5 : grade >= 5 ? 0.3 : 0,
    syncopation: fields.syncopation,
  };
}
