// The rhythm vocabulary: figures that fill one beat or a few, by the grade at which they usually come (common practice,
// no source). 4 is a crotchet, 8 a quaver, a dot lengthens, `r` is a rest, `3:` a triplet in the time of two, `2:` a
// duplet in the time of three. `offbeat` figures put their stress between the beats.

export interface FigureRow {
  readonly notes: string;
  readonly grade: number;
  readonly trait?: 'offbeat';
}

/** Figures over crotchet beats. */
export const simpleFigures: readonly FigureRow[] = [
  { notes: '4', grade: 1 },
  { notes: '2', grade: 1 },
  { notes: '1', grade: 1 },
  { notes: '8 8', grade: 2 },
  { notes: 'r4', grade: 2 },
  { notes: '2.', grade: 2 },
  { notes: 'r2', grade: 3 },
  { notes: '4. 8', grade: 3 },
  { notes: '8 4 8', grade: 4, trait: 'offbeat' },
  { notes: 'r8 8', grade: 4, trait: 'offbeat' },
  { notes: '8 r8', grade: 4 },
  { notes: '16 16 16 16', grade: 4 },
  { notes: '8 16 16', grade: 5 },
  { notes: '16 16 8', grade: 5 },
  { notes: '8. 16', grade: 5 },
  { notes: '3: 8 8 8', grade: 5 },
  { notes: '8 4.', grade: 5, trait: 'offbeat' },
  { notes: 'r8 4.', grade: 6, trait: 'offbeat' },
  { notes: 'r8 8 8 8', grade: 6 },
  { notes: '8 4 4 8', grade: 6, trait: 'offbeat' },
  { notes: 'r8 16 16', grade: 6 },
  { notes: '16 8 16', grade: 7, trait: 'offbeat' },
  { notes: '3: 4 4 4', grade: 7 },
  { notes: '8 r16 16', grade: 7 },
  { notes: '16 8.', grade: 7, trait: 'offbeat' },
  { notes: '3: 4 8', grade: 7 },
  { notes: '3: r8 8 8', grade: 8, trait: 'offbeat' },
  { notes: 'r16 8.', grade: 8, trait: 'offbeat' },
  { notes: '16 16 r8', grade: 8 },
  { notes: 'r16 16 16 16', grade: 8, trait: 'offbeat' },
];

/** Figures over dotted-crotchet beats. */
export const compoundFigures: readonly FigureRow[] = [
  { notes: '4.', grade: 1 },
  { notes: '2.', grade: 1 },
  { notes: '8 8 8', grade: 2 },
  { notes: '1.', grade: 2 },
  { notes: '4 8', grade: 2 },
  { notes: 'r4.', grade: 3 },
  { notes: '4 r8', grade: 3 },
  { notes: '8 4', grade: 4, trait: 'offbeat' },
  { notes: 'r8 8 8', grade: 4 },
  { notes: '8 r8 8', grade: 4 },
  { notes: '8. 16 8', grade: 5 },
  { notes: '8 16 16 8', grade: 5 },
  { notes: '4 16 16', grade: 5 },
  { notes: '8 8 16 16', grade: 6 },
  { notes: '16 16 16 16 16 16', grade: 6 },
  { notes: '16 16 8 8', grade: 6 },
  { notes: 'r4 8', grade: 6, trait: 'offbeat' },
  { notes: '2: 8 8', grade: 7 },
  { notes: '8 8. 16', grade: 7 },
  { notes: 'r8 4', grade: 7, trait: 'offbeat' },
  { notes: '8. 8.', grade: 8, trait: 'offbeat' },
  { notes: '16 8. 8', grade: 8, trait: 'offbeat' },
];
