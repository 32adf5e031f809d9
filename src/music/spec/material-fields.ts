// The fields of every kind of material. `fit` always means: what suits the student's stage, age and instrument.

import { listChordQualities } from '../chord/quality.ts';
import { listScales } from '../scale/scale.ts';
import {
  chartOrNull,
  chartText,
  choice,
  flag,
  shareOrFit,
  textOrNull,
  tonicOrFit,
  wholeOr,
  wholes,
  wordsOrFit,
} from './field.ts';
import { melodyOrNull } from './melody-text.ts';

export const noteValues = ['semibreve', 'minim', 'crotchet', 'quaver', 'triplet', 'semiquaver'] as const;
export const metres = ['2/4', '3/4', '4/4', '2/2', '3/8', '6/8', '9/8', '12/8', '5/4', '5/8', '7/8'] as const;
const fit = ['fit'] as const;

const scaleIds = listScales().map((scale) => scale.id);
const qualityIds = listChordQualities().map((quality) => quality.id);

const title = textOrNull('Title of the sheet; null for one made from the spec.');
const tempo = wholeOr(
  fit,
  30,
  300,
  'fit',
  'Beats a minute: crotchets, or dotted crotchets in compound metres.',
);
const names = choice(
  ['none', 'letters', 'sol_fa'],
  'none',
  'Note names under the notes: letters, or movable sol-fa from the key.',
);
const metreOrFit = choice([...fit, ...metres], 'fit', 'Time signature.');
const pitch = choice(
  ['written', 'concert'],
  'written',
  'Whether the key named in the spec is the one on the student’s page or the one that sounds.',
);
const grade = wholeOr(fit, 1, 8, 'fit', 'How hard the rhythm is, from 1 (crotchets and minims) to 8.');
const harder = flag(true, 'Whether the lines of the sheet get harder from first to last.');

const keyFields = {
  keys: wholeOr(fit, 1, 12, 'fit', 'In how many keys.'),
  order: choice(
    ['comfortable', 'fourths', 'fifths', 'semitones'],
    'comfortable',
    'Order of the keys: as usually learnt on the instrument, or by an interval upwards.',
  ),
  start: tonicOrFit('Tonic of the first key; fit for the most comfortable one.'),
  pitch,
  octaves: wholeOr(
    ['fit', 'five_notes', 'whole_range'],
    1,
    4,
    'fit',
    'How far up: octaves, the first five notes, or from tonic to the top of the range, down to its bottom and home.',
  ),
  direction: choice(['up_down', 'up', 'down', 'down_up'], 'up_down', 'Which way it goes.'),
  value: choice([...fit, ...noteValues], 'fit', 'Value of the running notes.'),
  metre: metreOrFit,
  articulation: choice(
    ['plain', 'slurred', 'staccato', 'slurred_pairs'],
    'plain',
    'How the notes are joined.',
  ),
  fingerings: flag(false, 'Whether fingerings stand over the notes, where the instrument’s are known.'),
  hands: choice(
    ['fit', 'right', 'left', 'both'],
    'fit',
    'Hands on keyboard instruments; no matter on others.',
  ),
  names,
  tempo,
  title,
};

export const scaleFields = {
  scale: choice(scaleIds, 'major', 'Which scale or mode.'),
  pattern: choice(
    [
      'steps',
      'thirds',
      'turned_thirds',
      'fourths',
      'one_two_three_five',
      'groups_of_three',
      'groups_of_four',
      'neighbours',
    ],
    'steps',
    'What is played on each degree: the scale itself, broken intervals, or a small figure moved from degree to degree.',
  ),
  rhythm: choice(
    ['even', 'long_short', 'short_long', 'turned'],
    'even',
    'Even notes, dotted either way, or six turned rhythms of the same passage one after the other.',
  ),
  descent: choice(
    ['classical', 'same'],
    'classical',
    'Whether a melodic minor comes down as natural minor (classical) or as it went up.',
  ),
  ...keyFields,
};

export const arpeggioFields = {
  quality: choice(qualityIds, 'major', 'Which chord.'),
  pattern: choice(
    ['straight', 'inversions', 'alternating'],
    'straight',
    'Straight up and down, each inversion in turn, or every other tone and back.',
  ),
  ...keyFields,
};

const chordsTyped = chartText('Chords, typed between bar lines.');
const chartKey = choice(
  ['as_typed', 'fit'],
  'as_typed',
  'Keep the chart’s sounding key, or move it to the student’s most comfortable one.',
);
const chartPitch = choice(
  ['written', 'concert'],
  'concert',
  'Whether the chart is typed as written or as it sounds.',
);
const metreTyped = choice(metres, '4/4', 'Time signature.');
const leap = wholeOr(fit, 2, 12, 'fit', 'Largest interval, counted in scale steps: 5 is a fifth.');
const rests = shareOrFit(0.5, 'Share of beat figures that hold a rest.');
const ties = choice(['fit', 'none', 'some'], 'fit', 'Whether notes are tied over beats and barlines.');
const syncopation = choice(
  ['fit', 'none', 'some', 'much'],
  'fit',
  'How often a stress falls between the beats.',
);
const lines = wholeOr(fit, 1, 24, 'fit', 'How many lines.');

export const rhythmFields = {
  metre: metreOrFit,
  bars: wholeOr(fit, 1, 16, 'fit', 'Bars in a line.'),
  lines,
  grade,
  values: wordsOrFit(
    noteValues,
    'Which note values may appear; fit for those of the grade. Dots join neighbouring values.',
  ),
  rests,
  ties,
  syncopation,
  on: choice(
    ['one_pitch', 'scale'],
    'one_pitch',
    'On one comfortable pitch, or with every bar a step on in the scale.',
  ),
  start: tonicOrFit('Pitch, or tonic of the scale; fit for the most comfortable one.'),
  pitch,
  harder,
  tempo,
  title,
};

export const phraseFields = {
  play: wholes(1, 8, [2], 'Bars to play in each turn; the list goes round.'),
  rest: wholes(0, 8, [2], 'Bars to rest after each turn; the list goes round.'),
  rounds: wholeOr(fit, 1, 16, 'fit', 'How many turns; fit ends with the chart where that is not long.'),
  content: choice(
    ['slashes', 'rhythm', 'written'],
    'slashes',
    'What stands in the bars to play: slashes to improvise over, a rhythm for notes of one’s own, or a written phrase.',
  ),
  chart: chartOrNull('Chords, repeated until the turns are over; null for one held chord of the scale.'),
  scale: choice(scaleIds, 'major', 'The scale shown at the top, on the tonic.'),
  showScale: flag(true, 'Whether the notes to choose from are shown first.'),
  start: tonicOrFit('Tonic; with a chart, the key it is moved to. fit for the most comfortable one.'),
  pitch,
  compass: wholeOr(fit, 1, 15, 'fit', 'How many neighbouring scale notes to use.'),
  metre: metreOrFit,
  feel: choice(['straight', 'swing'], 'straight', 'Even or swung quavers.'),
  grade,
  tempo,
  title,
};

export const lineFields = {
  chart: chordsTyped,
  content: choice(
    ['guide_tones', 'chord_tones', 'approach_notes', 'enclosures', 'call_and_response', 'motif'],
    'chord_tones',
    'What the line practises.',
  ),
  key: chartKey,
  pitch: chartPitch,
  metre: metreTyped,
  feel: choice(['fit', 'straight', 'swing'], 'fit', 'Even or swung quavers.'),
  choruses: wholeOr(
    fit,
    1,
    4,
    'fit',
    'How many times through the chart, each with a new line; fit fills about a page.',
  ),
  value: choice(['fit', 'minim', 'crotchet', 'quaver'], 'fit', 'Value of the running notes.'),
  leap,
  fingerings: flag(false, 'Whether fingerings stand over the notes, where the instrument’s are known.'),
  names,
  tempo,
  title,
};

export const readingFields = {
  key: tonicOrFit('Tonic; fit for the most comfortable one.'),
  mode: choice(['major', 'minor'], 'major', 'Major or minor.'),
  pitch,
  metre: metreOrFit,
  bars: wholeOr(fit, 2, 16, 'fit', 'Bars in a line.'),
  lines,
  compass: wholeOr(['fit', 'five_notes'], 3, 22, 'fit', 'How many neighbouring notes of the key are used.'),
  values: wordsOrFit(noteValues, 'Which note values may appear; fit for those of the grade.'),
  grade,
  leap,
  rests,
  ties,
  syncopation,
  second: choice(
    ['none', 'bass', 'duet'],
    'none',
    'A second staff: a bass line for the teacher, or a second part for the same instrument. With none, pianists past the beginning read on two staves unless compass is named.',
  ),
  marks: choice(['fit', 'none', 'some'], 'fit', 'Dynamics, slurs and staccato dots.'),
  harder,
  names,
  tempo,
  title,
};

export const chartFields = {
  chart: chordsTyped,
  melody: melodyOrNull('A tune over the chart: `G4:1 A4:1/2 r:1 | …`, lengths in crotchets; null for none.'),
  key: chartKey,
  pitch: chartPitch,
  metre: metreTyped,
  style: textOrNull('A word or two over the first bar: “medium swing”.'),
  feel: choice(['straight', 'swing'], 'straight', 'Even or swung quavers.'),
  bars: choice(
    ['slashes', 'empty', 'chord_tones', 'guide_tones'],
    'slashes',
    'What stands in bars without a tune: slashes, nothing (boxes to write in), the chord’s tones, or its guide tones.',
  ),
  names,
  tempo,
  title,
};
