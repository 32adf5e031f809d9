// Checks a unit can set for a take: what to listen for, in figures evidence can answer.

import { err, ok, type Result } from '#core';

/** One thing to listen for. Every kind reads as the sentence `describeCheck` makes of it. */
export type CheckSpec =
  /** Phrases of at least so many different lengths. */
  | { readonly kind: 'phraseLengths'; readonly atLeast: number }
  /** At least so many phrases of this length in bars. */
  | { readonly kind: 'phrasesOfBars'; readonly bars: number; readonly atLeast: number }
  /** Share of the time in rests between the first note and the last. */
  | { readonly kind: 'restShare'; readonly atLeast: number; readonly atMost: number }
  /** Mostly one value, and at least so many other values beside it. */
  | { readonly kind: 'mostlyValue'; readonly value: string; readonly share: number; readonly others: number }
  /** Variety of note values in bits. */
  | { readonly kind: 'valueVariety'; readonly atLeastBits: number }
  /** Share of notes off the beat held over the next. */
  | { readonly kind: 'syncopation'; readonly atLeastShare: number }
  /** Share of playing time inside the scale. */
  | { readonly kind: 'inScale'; readonly atLeastShare: number }
  /** Share of strong beats with a chord tone. */
  | { readonly kind: 'chordTones'; readonly atLeastShare: number }
  /** Spread about the beat. */
  | { readonly kind: 'evenTiming'; readonly withinMs: number }
  /** Tempo from first to last note. */
  | { readonly kind: 'keepsTempo'; readonly withinPercent: number }
  /** Ratio of the first quaver of a pair to the second. */
  | { readonly kind: 'swing'; readonly from: number; readonly to: number }
  /** Notes held this long that stay this close to pitch. */
  | {
      readonly kind: 'longNotes';
      readonly withinCents: number;
      readonly seconds: number;
      readonly times: number;
    }
  /** Spread of pitch about the take's own tuning. */
  | { readonly kind: 'inTune'; readonly withinCents: number }
  /** From soft to loud. */
  | { readonly kind: 'dynamicRange'; readonly atLeastDb: number }
  /** A cell that comes back this often. */
  | { readonly kind: 'motif'; readonly times: number }
  /** At least so many long notes with vibrato. */
  | { readonly kind: 'vibrato'; readonly times: number };

export type CheckKind = CheckSpec['kind'];

export interface CheckField {
  readonly name: string;
  /** `value` is the name of a note value; every other field is a number. */
  readonly type: 'number' | 'value';
  readonly low: number;
  readonly high: number;
  /** What an editor offers first. */
  readonly usual: number | string;
}

const number = (name: string, low: number, high: number, usual: number): CheckField => ({
  name,
  type: 'number',
  low,
  high,
  usual,
});
const share = (name: string, usual: number) => number(name, 0, 1, usual);

/** The fields of every kind, for an editor and for reading. Usual values are common practice, no source. */
export const checkFields: Readonly<Record<CheckKind, readonly CheckField[]>> = {
  phraseLengths: [number('atLeast', 1, 20, 3)],
  phrasesOfBars: [number('bars', 0.5, 32, 2), number('atLeast', 1, 50, 2)],
  restShare: [share('atLeast', 0.1), share('atMost', 0.5)],
  mostlyValue: [
    { name: 'value', type: 'value', low: 0, high: 0, usual: 'quaver' },
    share('share', 0.5),
    number('others', 0, 10, 1),
  ],
  valueVariety: [number('atLeastBits', 0, 4, 1.2)],
  syncopation: [share('atLeastShare', 0.1)],
  inScale: [share('atLeastShare', 0.9)],
  chordTones: [share('atLeastShare', 0.7)],
  evenTiming: [number('withinMs', 5, 200, 40)],
  keepsTempo: [number('withinPercent', 0.5, 30, 3)],
  swing: [number('from', 1, 4, 1.3), number('to', 1, 4, 2.2)],
  longNotes: [number('withinCents', 3, 100, 15), number('seconds', 0.5, 60, 4), number('times', 1, 50, 1)],
  inTune: [number('withinCents', 3, 100, 12)],
  dynamicRange: [number('atLeastDb', 1, 60, 10)],
  motif: [number('times', 2, 20, 3)],
  vibrato: [number('times', 1, 50, 2)],
};

/** Names of note values a check may ask for. */
export const checkableValues = [
  'semibreve',
  'minim',
  'dotted crotchet',
  'crotchet',
  'dotted quaver',
  'quaver',
  'semiquaver',
  'triplet crotchet',
  'triplet quaver',
] as const;

export interface CheckUnreadable {
  readonly kind: 'CheckUnreadable';
  readonly message: string;
}

/** Reads a check; the error says which field is at fault and what it takes. */
export function parseCheckSpec(value: unknown): Result<CheckSpec, CheckUnreadable> {
  const given = (typeof value === 'object' && value !== null ? value : {}) as Readonly<
    Record<string, unknown>
  >;
  const kind = Object.keys(checkFields).find((known) => known === given['kind']) as CheckKind | undefined;
  if (kind === undefined)
    return unreadable(
      `its kind is ${String(given['kind'])}: use one of ${Object.keys(checkFields).join(', ')}`,
    );
  const spec: Record<string, unknown> = { kind };
  for (const field of checkFields[kind]) {
    const told = given[field.name] ?? field.usual;
    if (field.type === 'value') {
      if (!checkableValues.some((known) => known === told))
        return unreadable(`${field.name} is ${String(told)}: use one of ${checkableValues.join(', ')}`);
    } else if (typeof told !== 'number' || !(told >= field.low && told <= field.high))
      return unreadable(
        `${field.name} is ${String(told)}: write a number from ${field.low} to ${field.high}`,
      );
    spec[field.name] = told;
  }
  return ok(spec as CheckSpec); // every field of its kind has just been checked
}

function unreadable(problem: string): { ok: false; error: CheckUnreadable } {
  return err({ kind: 'CheckUnreadable', message: `A check cannot be read: ${problem}.` });
}
