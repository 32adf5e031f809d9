// What every row of evidence is made of: figures with their uncertainty, and the passages that show them.

export type FigureUnit =
  | 'count'
  | 'bars'
  | 'beats'
  | 'seconds'
  | 'ms'
  | 'share'
  | 'percent'
  | 'bits'
  | 'strength'
  | 'ratio'
  | 'cents'
  | 'db'
  | 'hertz';

/** A measured value; about nineteen times in twenty the truth lies within `uncertainty` of it. */
export interface Figure {
  readonly value: number;
  readonly uncertainty: number;
  readonly unit: FigureUnit;
}

/** A stretch of the take that shows something. */
export interface Passage {
  /** Seconds from the file's start. */
  readonly from: number;
  readonly to: number;
  /** Bar number from 1 where it begins; null without a grid, 0 or less in an upbeat. */
  readonly bar: number | null;
  /** What is to be heard there, in a few words. */
  readonly shows: string;
}

export interface HeardRow<Name extends string, Details> {
  readonly heard: true;
  /** The figures that could be measured; a name may be missing where this take gives no ground for it. */
  readonly figures: Readonly<Partial<Record<Name, Figure>>>;
  readonly details: Details;
  readonly passages: readonly Passage[];
}

export interface UnheardRow {
  readonly heard: false;
  /** Why it could not be heard. */
  readonly reason: string;
}

export type Row<Name extends string, Details> = HeardRow<Name, Details> | UnheardRow;

/** A row that could not be heard. */
export function couldNotHear(reason: string): UnheardRow {
  return { heard: false, reason };
}

/** A figure; its uncertainty is a size, whatever its sign was. */
export function figure(value: number, uncertainty: number, unit: FigureUnit): Figure {
  return { value, uncertainty: Math.abs(uncertainty), unit };
}

/** A share of a number of things of which some are doubtful: one of them at least is always in doubt. */
export function shareFigure(count: number, total: number, doubtful: number): Figure {
  return figure(count / Math.max(1, total), Math.max(0.5, doubtful) / Math.max(1, total), 'share');
}
