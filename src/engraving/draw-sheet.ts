// The whole way of a material: spec and student → sheet → MusicXML → pages. Screens, command line and bench take this one.

import { ok, type Result } from '#core';
import {
  createSheet,
  describeScore,
  type MaterialSpec,
  type NoteNaming,
  type Sheet,
  type SheetFor,
  type SheetRefused,
  scoreToMusicXml,
} from '#music';
import { type EngravedPage, type EngravingFault, type EngravingOptions, engrave } from './engrave.ts';

export interface DrawnSheet {
  readonly sheet: Sheet;
  readonly pages: readonly EngravedPage[];
}

export interface SheetDrawing extends Omit<EngravingOptions, 'description'> {
  /** How the description names note values. */
  readonly naming?: NoteNaming;
}

/** The sheet a spec makes for a student, engraved. */
export async function drawSheet(
  spec: MaterialSpec,
  student: SheetFor,
  { naming = 'british', ...options }: SheetDrawing,
): Promise<Result<DrawnSheet, SheetRefused | EngravingFault>> {
  const sheet = createSheet(spec, student);
  if (!sheet.ok) return sheet;
  const { score } = sheet.value;
  const pages = await engrave(scoreToMusicXml(score), {
    ...options,
    description: describeScore(score, naming),
  });
  return pages.ok ? ok({ sheet: sheet.value, pages: pages.value }) : pages;
}
