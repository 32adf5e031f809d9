// Beat figures as timed slots, and which of them a line may use. Time is counted in ticks of 1/192 semibreve: every value
// and triplet in the vocabulary is a whole number of them, and `ticksToFraction` gives the exact fraction back.

import { assert } from '#core';
import type { TupletRatio } from '../../duration/note-value.ts';
import { type Fraction, fraction } from '../../fraction/fraction.ts';
import type { TupletPlace } from '../../score/score.ts';
import { compoundFigures, type FigureRow, simpleFigures } from './beat-figure.data.ts';

export const ticksPerWhole = 192;
export const crotchet = ticksPerWhole / 4;

/** The exact length of some ticks, in semibreves. */
export function ticksToFraction(ticks: number): Fraction {
  return fraction(ticks, ticksPerWhole);
}

/** A sound or silence inside a figure, bar or line. */
export interface Slot {
  /** From the start of what it belongs to, in ticks. */
  readonly at: number;
  readonly length: number;
  readonly isRest: boolean;
  readonly tuplet: TupletPlace | null;
}

export type NoteValueName = 'semibreve' | 'minim' | 'crotchet' | 'quaver' | 'triplet' | 'semiquaver';

export interface BeatFigure {
  readonly notes: string;
  readonly grade: number;
  readonly isOffbeat: boolean;
  readonly hasRest: boolean;
  readonly length: number;
  readonly slots: readonly Slot[];
  /** Values one must know to read it. */
  readonly values: readonly NoteValueName[];
}

const valueNames = new Map<number, NoteValueName>([
  [1, 'semibreve'],
  [2, 'minim'],
  [4, 'crotchet'],
  [8, 'quaver'],
  [16, 'semiquaver'],
]);

const tupletRatios: Readonly<Record<string, TupletRatio>> = {
  '3': { actual: 3, normal: 2 },
  '2': { actual: 2, normal: 3 },
};

function readFigure(row: FigureRow): BeatFigure {
  const [, mark, body = ''] = /^(?:([23]):\s*)?(.*)$/.exec(row.notes) ?? [];
  const ratio = mark === undefined ? null : (tupletRatios[mark] ?? null);
  const tokens = body.split(' ');
  const values = new Set<NoteValueName>(ratio === null ? [] : ['triplet']);
  let at = 0;
  const slots = tokens.map((token, i): Slot => {
    const [, restMark, denominator, dot] = /^(r?)(\d+)(\.?)$/.exec(token) ?? [];
    const plain = ticksPerWhole / Number(denominator);
    const dotted = dot === '.' ? (plain * 3) / 2 : plain;
    const length = ratio === null ? dotted : (dotted * ratio.normal) / ratio.actual;
    assert(Number.isInteger(length), `a figure the vocabulary holds: ${row.notes}`);
    const name = valueNames.get(Number(denominator));
    if (name !== undefined && ratio === null) values.add(name);
    const below = valueNames.get(Number(denominator) * 2);
    // A dotted crotchet asks for quavers to be felt; a dotted minim or semibreve does not.
    if (dot === '.' && Number(denominator) >= 4 && below !== undefined) values.add(below);
    const place = i === 0 ? 'start' : i === tokens.length - 1 ? 'end' : 'middle';
    const slot = {
      at,
      length,
      isRest: restMark === 'r',
      tuplet: ratio === null ? null : ({ ...ratio, at: place } as const),
    };
    at += length;
    return slot;
  });
  return {
    notes: row.notes,
    grade: row.grade,
    isOffbeat: row.trait === 'offbeat',
    hasRest: slots.some((slot) => slot.isRest),
    length: at,
    slots,
    values: [...values],
  };
}

const simple = simpleFigures.map(readFigure);
const compound = compoundFigures.map(readFigure);

/** All figures over crotchet beats, or over dotted-crotchet beats, the easiest first. */
export function listFigures(beat: 'simple' | 'compound'): readonly BeatFigure[] {
  return beat === 'simple' ? simple : compound;
}
