// The words scores are told in, in one place so that another language or naming can stand beside them. British and
// American names of notes are standard (shared reference table of rhythm; see checks/theory).

import type { NoteType } from '../duration/note-value.ts';
import type { Articulation, Dynamic, ScoreClef } from '../score/score.ts';

/** Which names of notes a reader uses: crotchet and bar, or quarter note and measure. */
export type NoteNaming = 'british' | 'american';

export const valueWords: Readonly<Record<NoteNaming, Readonly<Record<NoteType, string>>>> = {
  british: {
    breve: 'breve',
    whole: 'semibreve',
    half: 'minim',
    quarter: 'crotchet',
    eighth: 'quaver',
    '16th': 'semiquaver',
    '32nd': 'demisemiquaver',
    '64th': 'hemidemisemiquaver',
  },
  american: {
    breve: 'double whole note',
    whole: 'whole note',
    half: 'half note',
    quarter: 'quarter note',
    eighth: 'eighth note',
    '16th': 'sixteenth note',
    '32nd': 'thirty-second note',
    '64th': 'sixty-fourth note',
  },
};

export const barWords: Readonly<Record<NoteNaming, string>> = { british: 'bar', american: 'measure' };

export const dotWords = ['', 'dotted ', 'double dotted '] as const;

export const clefWords: Readonly<Record<ScoreClef, string>> = {
  treble: 'treble clef',
  treble_8: 'treble clef sounding an octave lower',
  bass: 'bass clef',
  alto: 'alto clef',
  tenor: 'tenor clef',
  percussion: 'percussion clef',
  tab: 'tablature',
};

export const articulationWords: Readonly<Record<Articulation, string>> = {
  staccato: 'staccato',
  tenuto: 'tenuto',
  accent: 'accented',
  marcato: 'strongly accented',
  staccatissimo: 'very short',
  fermata: 'with a pause',
  'up-bow': 'up bow',
  'down-bow': 'down bow',
  breath: 'then a breath',
};

export const dynamicWords: Readonly<Record<Dynamic, string>> = {
  pp: 'very quiet (pp)',
  p: 'quiet (p)',
  mp: 'moderately quiet (mp)',
  mf: 'moderately loud (mf)',
  f: 'loud (f)',
  ff: 'very loud (ff)',
  fp: 'loud then quiet at once (fp)',
  sfz: 'suddenly loud (sfz)',
};

export const alterWords: ReadonlyMap<number, string> = new Map([
  [-2, ' double flat'],
  [-1, ' flat'],
  [0, ''],
  [1, ' sharp'],
  [2, ' double sharp'],
]);

/** Tuplets by how many notes they have. */
export const tupletWords: ReadonlyMap<number, string> = new Map([
  [2, 'duplet'],
  [3, 'triplet'],
  [4, 'quadruplet'],
  [5, 'quintuplet'],
  [6, 'sextuplet'],
  [7, 'septuplet'],
]);
