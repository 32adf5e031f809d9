// The one entrance: a spec and a student make a sheet.

import { ok, type Result } from '#core';
import type { SheetFor } from '../shape/student-shape.ts';
import type { MaterialSpec } from '../spec/material-spec.ts';
import { createArpeggioSheet } from './arpeggio/create-arpeggio-sheet.ts';
import { createChartSheet } from './chart/create-chart-sheet.ts';
import { createLineSheet } from './line/create-line-sheet.ts';
import { createPhraseSheet } from './phrase/create-phrase-sheet.ts';
import { createReadingSheet } from './reading/create-reading-sheet.ts';
import { createRhythmSheet } from './rhythm/create-rhythm-sheet.ts';
import { createScaleSheet } from './scale/create-scale-sheet.ts';
import type { Draft, Sheet, SheetRefused } from './sheet/sheet.ts';
import { footerFor } from './sheet/title.ts';

function draft(spec: MaterialSpec, student: SheetFor): Result<Draft, SheetRefused> {
  switch (spec.kind) {
    case 'scale':
      return createScaleSheet(spec, student);
    case 'arpeggio':
      return createArpeggioSheet(spec, student);
    case 'rhythm':
      return createRhythmSheet(spec, student);
    case 'reading':
      return createReadingSheet(spec, student);
    case 'phrase':
      return createPhraseSheet(spec, student);
    case 'line':
      return createLineSheet(spec, student);
    case 'chart':
      return createChartSheet(spec, student);
  }
}

/**
 * The sheet a spec makes for a student: shaped to stage, age and instrument, the same bytes for the same seed; refused,
 * with the reason, where no shaping makes it fit. The spec is one that `parseMaterialSpec` has read.
 */
export function createSheet(spec: MaterialSpec, student: SheetFor): Result<Sheet, SheetRefused> {
  const made = draft(spec, student);
  if (!made.ok) return made;
  const title = spec.title ?? made.value.score.title;
  const score = { ...made.value.score, title, footer: footerFor(student.instrument, student.stage) };
  return ok({ score, title, seed: student.seed, spec, notes: made.value.notes });
}
