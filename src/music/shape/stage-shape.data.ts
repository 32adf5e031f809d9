// What a stage asks for. One table; every row is common practice, no source, unless a line says otherwise: teachers
// differ, and a spec may name its own value for each of them.

import type { Stage } from '#core';

export interface StageShape {
  /** How hard the rhythm is, 1 to 8. */
  readonly rhythmGrade: number;
  /** Notes of the key a reading line uses, and the largest interval in it (3 is a third). */
  readonly readingNotes: number;
  readonly largestLeap: number;
  /** Bars of a reading or rhythm line, and lines on a sheet. */
  readonly bars: number;
  readonly lines: number;
  /** Keys on a scale or arpeggio sheet, and most octaves. */
  readonly keys: number;
  readonly octaves: number;
  readonly scaleValue: 'crotchet' | 'quaver' | 'semiquaver';
  /** Beats a minute: [running scales, reading, lines over chords]. Within 60-92 for beginners, 72-120 for intermediate
   * (shared reference table of trade facts: common practice). */
  readonly tempo: { readonly scale: number; readonly reading: number; readonly line: number };
  /** Turns on a play-and-rest sheet; neighbouring scale notes used in it. */
  readonly rounds: number;
  readonly phraseNotes: number;
  /** Most bars of crotchets and longer on one breath or bow without a place to take the next. */
  readonly barsOnABreath: number;
  /** How many of the instrument's clefs are read. */
  readonly clefs: number;
  /** Most ledger lines a reading line is given. */
  readonly ledgerLines: number;
}

export const shapesByStage: Readonly<Record<Stage, StageShape>> = {
  beginner: {
    rhythmGrade: 2,
    readingNotes: 5,
    largestLeap: 3,
    bars: 4,
    lines: 6,
    keys: 2,
    octaves: 1,
    scaleValue: 'crotchet',
    tempo: { scale: 76, reading: 66, line: 76 },
    rounds: 4,
    phraseNotes: 5,
    barsOnABreath: 2,
    clefs: 1,
    ledgerLines: 1,
  },
  elementary: {
    rhythmGrade: 3,
    readingNotes: 8,
    largestLeap: 5,
    bars: 4,
    lines: 6,
    keys: 3,
    octaves: 1,
    scaleValue: 'quaver',
    tempo: { scale: 66, reading: 72, line: 92 },
    rounds: 4,
    phraseNotes: 5,
    barsOnABreath: 2,
    clefs: 1,
    ledgerLines: 2,
  },
  intermediate: {
    rhythmGrade: 5,
    readingNotes: 11,
    largestLeap: 6,
    bars: 8,
    lines: 4,
    keys: 5,
    octaves: 2,
    scaleValue: 'quaver',
    tempo: { scale: 92, reading: 80, line: 112 },
    rounds: 4,
    phraseNotes: 6,
    barsOnABreath: 4,
    clefs: 1,
    ledgerLines: 3,
  },
  advanced: {
    rhythmGrade: 7,
    readingNotes: 14,
    largestLeap: 8,
    bars: 8,
    lines: 4,
    keys: 12,
    octaves: 3,
    scaleValue: 'semiquaver',
    tempo: { scale: 80, reading: 88, line: 132 },
    rounds: 4,
    phraseNotes: 8,
    barsOnABreath: 4,
    clefs: 3,
    ledgerLines: 4,
  },
};

/** Up to this age a sheet is shorter and slower, whatever the stage (common practice, no source). */
export const shapesByAge: readonly {
  readonly upTo: number;
  readonly most: {
    readonly lines: number;
    readonly keys: number;
    readonly bars: number;
    readonly rhythmGrade: number;
  };
  readonly slower: number;
}[] = [
  { upTo: 7, most: { lines: 4, keys: 2, bars: 4, rhythmGrade: 2 }, slower: 0.85 },
  { upTo: 9, most: { lines: 5, keys: 3, bars: 4, rhythmGrade: 4 }, slower: 0.92 },
  { upTo: 12, most: { lines: 6, keys: 6, bars: 8, rhythmGrade: 6 }, slower: 1 },
];
