// The fields of a backing material, as data: they give the reader, the type, the defaults and the published schema, as
// those of sheets do.

import { err, nearestWord, ok } from '#core';
import { chartText, choice, type Field, flag, textOrNull, whole, wholeOr } from '../spec/field.ts';
import { pictureOf, specFault } from '../spec/spec-fault.ts';
import { feelIds } from './feel.ts';

/** Notes that a held tone can have, with the names of both sides of a black key. */
export const toneNames = [
  'C',
  'C#',
  'Db',
  'D',
  'D#',
  'Eb',
  'E',
  'F',
  'F#',
  'Gb',
  'G',
  'G#',
  'Ab',
  'A',
  'A#',
  'Bb',
  'B',
] as const;

const clicks = ['none', 'every', 'back', 'first', 'vanishing'] as const;
const orders = ['same', 'fourths', 'fifths', 'semitones'] as const;
type KeyOrder = (typeof orders)[number];

const level = (part: string) => whole(0, 100, 100, `Loudness of the ${part} in per cent; 0 leaves it out.`);

/** How the key moves from chorus to chorus: a word, or semitones from the typed key for each chorus in turn. */
const keyMoves: Field<KeyOrder | readonly number[]> = {
  about: 'How the key moves with each chorus: a word, or a list of semitones from the typed key.',
  fallback: 'same',
  schema: {
    anyOf: [
      { enum: orders },
      {
        type: 'array',
        minItems: 1,
        maxItems: 64,
        items: { type: 'integer', minimum: -11, maximum: 11 },
      },
    ],
  },
  read(value, at) {
    const word = orders.find((one) => one === value);
    if (word !== undefined) return ok(word);
    if (typeof value === 'string')
      return err(
        specFault(
          'NotAChoice',
          at,
          `is ${pictureOf(value)}, which is not one of its words`,
          nearestWord(value, orders),
        ),
      );
    if (!Array.isArray(value))
      return err(
        specFault('WrongType', at, `is ${pictureOf(value)}, not a word or a list of semitones`, 'same'),
      );
    if (value.length < 1 || value.length > 64)
      return err(specFault('OutOfRange', at, `has ${value.length} entries, not 1 to 64`, 'same'));
    const moves: number[] = [];
    for (const [nth, entry] of value.entries()) {
      const move = whole(-11, 11, 0, '').read(entry, `${at}/${nth}`);
      if (!move.ok) return move;
      moves.push(move.value);
    }
    return ok(moves);
  },
};

/** `fit`, or how much longer the first of two quavers is than the second. */
const swingRatio: Field<'fit' | number> = {
  about: 'How much longer the first of two swung quavers is than the second; fit follows the tempo.',
  fallback: 'fit',
  schema: { anyOf: [{ enum: ['fit'] }, { type: 'number', minimum: 1, maximum: 4 }] },
  read(value, at) {
    if (value === 'fit') return ok('fit');
    if (typeof value !== 'number' || !Number.isFinite(value))
      return err(specFault('WrongType', at, `is ${pictureOf(value)}, not a number from 1 to 4`, 'fit'));
    const nearest = Math.min(4, Math.max(1, value));
    return nearest === value
      ? ok(value)
      : err(specFault('OutOfRange', at, `is ${value}, not from 1 to 4`, nearest));
  },
};

export const backingFields = {
  chart: chartText('Chords as they sound, typed between bar lines.'),
  feel: choice(feelIds, 'swing', 'How the band plays.'),
  tempo: whole(30, 320, 120, 'Beats a minute: crotchets, or dotted crotchets in 6/8.'),
  choruses: whole(1, 64, 3, 'Times through the chart.'),
  key: choice(
    ['as_typed', 'fit'],
    'as_typed',
    'Keep the chart’s sounding key, or move it to the most comfortable one of the student it is played for.',
  ),
  transpose: whole(-11, 11, 0, 'Semitones by which the whole track is moved.'),
  keys: keyMoves,
  tempoStep: whole(-40, 40, 0, 'Beats a minute added with each chorus; below 0 it slows down.'),
  tempoLimit: wholeOr(['none'], 30, 320, 'none', 'Where the steps in tempo stop.'),
  countIn: wholeOr(['fit'], 0, 2, 'fit', 'Bars counted in.'),
  play: whole(1, 32, 2, 'Bars that the band plays before it rests, where it rests at all.'),
  rest: whole(0, 32, 0, 'Bars in which the band rests, after each turn of playing; 0 for none.'),
  resting: choice(
    ['time', 'nothing'],
    'time',
    'What is heard while the band rests: the time goes on, or nothing at all.',
  ),
  trade: whole(0, 32, 0, 'Bars that the band plays and then leaves free, in turn; 0 for none.'),
  bass: level('bass'),
  keyboard: level('keyboard'),
  drums: level('drums'),
  click: choice(
    clicks,
    'none',
    'Which beats click: every one, the second and fourth, the first of a bar, or fewer bars with each chorus.',
  ),
  drone: choice(
    ['none', 'tonic', ...toneNames],
    'none',
    'A tone held all through, as it sounds; tonic is the first note of the key the chart is played in.',
  ),
  tuning: choice(
    ['none', ...toneNames],
    'none',
    'A tone to tune to, held for about four seconds before all.',
  ),
  grows: flag(false, 'Whether the band gets louder and busier from chorus to chorus.'),
  swing: swingRatio,
  human: whole(0, 100, 100, 'How freely the band plays, in per cent: 0 is exactly on the grid.'),
  title: textOrNull('Title of the track; null for none.'),
};
