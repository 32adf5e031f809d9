// A tune as text: `G4:1 A4:1/2 r:1 | …`, each token a pitch (or r for a rest) and its length in crotchets; `~` after it
// ties into the next. Bar lines check the bars and may stand anywhere between tokens.

import { err, ok, type Result } from '#core';
import { compare, type Fraction, fraction, parseFraction, plus, times, zero } from '../fraction/fraction.ts';
import { type Pitch, parsePitch } from '../pitch/pitch.ts';
import type { Field } from './field.ts';
import { pictureOf, type SpecFault, specFault } from './spec-fault.ts';

export interface TuneNote {
  /** null for a rest. */
  readonly pitch: Pitch | null;
  /** In semibreves. */
  readonly length: Fraction;
  readonly isTied: boolean;
}

/** The notes of a tune by bars as its bar lines cut it. */
export type Tune = readonly (readonly TuneNote[])[];

const mostNotes = 512;
const longestTune = 8000;

function readToken(token: string): TuneNote | null {
  const match = /^([A-Ga-g](?:##?|bb?)?\d|r):(\d{1,2}(?:\/\d)?)(~?)$/.exec(token);
  const crotchets = match === null ? null : parseFraction(match[2] ?? '');
  if (match === null || crotchets === null || crotchets.n <= 0) return null;
  const isDyadic = [1, 2, 4, 8].includes(crotchets.d);
  const pitch = match[1] === 'r' ? null : parsePitch(match[1] ?? '');
  if (!isDyadic || (match[1] !== 'r' && pitch === null)) return null;
  return { pitch, length: times(crotchets, fraction(1, 4)), isTied: match[3] === '~' };
}

/** Reads a tune; a fault's `at` is the field's pointer and its text names the bar and token. */
export function parseTune(text: string, at: string): Result<Tune, SpecFault> {
  const bars: TuneNote[][] = [];
  let count = 0;
  for (const [i, barText] of text.split('|').entries()) {
    const bar: TuneNote[] = [];
    for (const token of barText.split(/\s+/).filter((t) => t !== '')) {
      const read = readToken(token);
      if (read === null) {
        const wrong = `has ${pictureOf(token)} in bar ${bars.length + 1}, which is no note like G4:1 or r:1/2`;
        return err(specFault('Unreadable', at, wrong, nearestToken(token)));
      }
      bar.push(read);
      if (++count > mostNotes)
        return err(specFault('OutOfRange', at, `has more than ${mostNotes} notes`, null));
    }
    if (bar.length > 0) bars.push(bar);
    else if (i > 0 && i < text.split('|').length - 1)
      return err(specFault('Unreadable', at, `has an empty bar ${bars.length + 1}`, 'r:4'));
  }
  if (bars.length === 0) return err(specFault('Unreadable', at, 'has no notes', 'C4:1'));
  return ok(bars);
}

/** The same token with a readable pitch and length, as far as it can be guessed. */
function nearestToken(token: string): string {
  const pitch = /[A-G][#b]?\d|r/.exec(token)?.[0] ?? 'C4';
  return `${pitch}:${/:(\d{1,2})/.exec(token)?.[1] ?? '1'}`;
}

/** How long some notes are together. */
export function tuneLength(bar: readonly TuneNote[]): Fraction {
  return bar.reduce((sum, { length }) => plus(sum, length), zero);
}

/** The first bar, from 0, that is not as long as the metre says (a first or last one: that is longer); null when there is none. */
export function badTuneBar(tune: Tune, length: Fraction): number | null {
  const index = tune.findIndex((bar, i) => {
    const difference = compare(tuneLength(bar), length);
    return i === 0 || i === tune.length - 1 ? difference > 0 : difference !== 0;
  });
  return index < 0 ? null : index;
}

/** A tune as text, or null. */
export function melodyOrNull(about: string): Field<string | null> {
  return {
    about,
    fallback: null,
    schema: { anyOf: [{ type: 'string', minLength: 1, maxLength: longestTune }, { type: 'null' }] },
    read(value, at) {
      if (value === null) return ok(null);
      if (typeof value !== 'string')
        return err(specFault('WrongType', at, `is ${pictureOf(value)}, not a tune`, null));
      if (value.length > longestTune)
        return err(specFault('OutOfRange', at, `has more than ${longestTune} characters`, null));
      const tune = parseTune(value, at);
      return tune.ok ? ok(value) : tune;
    },
  };
}
