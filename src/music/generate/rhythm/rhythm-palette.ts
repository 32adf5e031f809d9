// Which figures a line of rhythm is made of: the plain ones of its grade and a few features that give it its face.

import type { Random } from '#core';
import type { Metre } from '../../rhythm/metre.ts';
import { type BeatFigure, listFigures, type NoteValueName } from './beat-figure.ts';
import { beatGrid } from './beat-grid.ts';
import { chooseWeighted } from './choose.ts';

export interface RhythmOptions {
  readonly metre: Metre;
  readonly bars: number;
  /** 1 to 8. */
  readonly grade: number;
  /** null for those of the grade. */
  readonly values: readonly NoteValueName[] | null;
  /** Share of figures with a rest in them. */
  readonly rests: number;
  /** Chance of a tie where one can stand. */
  readonly ties: number;
  readonly syncopation: 'none' | 'fit' | 'some' | 'much';
}

export interface Palette {
  readonly weights: ReadonlyMap<BeatFigure, number>;
  /** Whether the wanted values alone could not fill a beat. */
  readonly isWidened: boolean;
}

const plainNotes = ['4', '8 8', '2', '4.', '8 8 8', '4 8', '2.', '1', '1.'];
/** Long figures fill bars fast, so they come up less. */
const plainWeights: Readonly<Record<string, number>> = {
  '4': 3,
  '8 8': 3.4,
  '2': 1.3,
  '4.': 2,
  '8 8 8': 2.6,
  '4 8': 2.4,
  '2.': 0.35,
  '1': 0.12,
  '1.': 0.1,
};

function isAllowed(
  figure: BeatFigure,
  options: RhythmOptions,
  plainest: ReadonlyMap<NoteValueName, number>,
): boolean {
  const { grade, values, syncopation, rests } = options;
  if (syncopation === 'none' && figure.isOffbeat) return false;
  if (values !== null && !figure.values.every((value) => values.includes(value))) return false;
  if (figure.grade <= grade) return true;
  if (figure.isOffbeat) return syncopation === 'some' || syncopation === 'much' ? figure.grade <= 5 : false;
  if (figure.hasRest) return rests > 0.15 && figure.grade <= 4 && !figure.values.includes('semiquaver');
  // A value named in the spec that the grade has no figure for comes in with its plainest one.
  return values !== null && figure.values.some((value) => plainest.get(value) === figure.grade);
}

function weightOf(figure: BeatFigure, options: RhythmOptions): number {
  const isPlain = plainNotes.includes(figure.notes);
  // The harder the line, the less of it is plain.
  const share = isPlain ? Math.max(0.3, 1 - 0.14 * (options.grade - 2)) : 2;
  let weight = (plainWeights[figure.notes] ?? 1) * share;
  if (figure.isOffbeat && options.syncopation === 'much') weight *= 3;
  if (figure.isOffbeat && options.syncopation === 'fit') weight *= 0.7;
  return weight;
}

/** For each value that no figure of the grade holds, the lowest grade of one that does. */
function plainestGrades(figures: readonly BeatFigure[], grade: number): ReadonlyMap<NoteValueName, number> {
  const known = new Set(figures.filter((figure) => figure.grade <= grade).flatMap(({ values }) => values));
  const grades = new Map<NoteValueName, number>();
  for (const figure of figures) {
    if (figure.hasRest || figure.isOffbeat) continue;
    for (const value of figure.values)
      if (!known.has(value) && !grades.has(value)) grades.set(value, figure.grade);
  }
  return grades;
}

/** Draws the figures of a line: all plain ones, and one to four features, one of them of the line's own grade. */
export function choosePalette(random: Random, options: RhythmOptions): Palette {
  const kinds = [...new Set(beatGrid(options.metre).map((beat) => beat.kind))];
  const weights = new Map<BeatFigure, number>();
  let isWidened = false;
  for (const kind of kinds) {
    const figures = listFigures(kind);
    const plainest = plainestGrades(figures, options.grade);
    const allowed = figures.filter((figure) => isAllowed(figure, options, plainest));
    const features = allowed.filter((figure) => !plainNotes.includes(figure.notes) && !figure.hasRest);
    for (const figure of allowed)
      if (plainNotes.includes(figure.notes)) weights.set(figure, weightOf(figure, options));
    const count = Math.min(features.length, options.grade <= 3 ? 1 : options.grade <= 5 ? 2 : 3);
    const chosen: BeatFigure[] = [];
    while (chosen.length < count) {
      const left = features.filter((figure) => !chosen.includes(figure));
      const top = Math.max(...left.map((figure) => figure.grade));
      const wantsOffbeat =
        options.syncopation !== 'fit' && !chosen.some((f) => f.isOffbeat) && left.some((f) => f.isOffbeat);
      const figure = chooseWeighted(random, left, (f) =>
        wantsOffbeat
          ? f.isOffbeat
            ? 1
            : 0
          : chosen.length === 0
            ? f.grade >= top - 1
              ? 1
              : 0
            : 1 / (1 + top - f.grade),
      );
      chosen.push(figure);
      weights.set(figure, weightOf(figure, options));
    }
    const rests = allowed.filter((figure) => figure.hasRest);
    for (const figure of rests) weights.set(figure, figure.grade >= options.grade - 3 ? 1 : 0.5);
    // The beat itself is always there to fall back on.
    const beat = listFigures(kind)[0];
    const fillsBeat = allowed.some((figure) => !figure.hasRest && figure.length === beat?.length);
    if (beat !== undefined && !fillsBeat) {
      weights.set(beat, 1);
      isWidened = true;
    }
  }
  return { weights, isWidened };
}
