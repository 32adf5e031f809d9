// Checks a unit can set for a take: what to listen for, in figures evidence can answer.

import { err, isFields, ok, type Result } from '#core';

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
  /** Whether it counts something, so that only whole numbers make sense. */
  readonly isWhole: boolean;
  /** What an editor offers first. */
  readonly usual: number | string;
}

const number = (name: string, low: number, high: number, usual: number): CheckField => ({
  name,
  type: 'number',
  low,
  high,
  isWhole: false,
  usual,
});
const share = (name: string, usual: number) => number(name, 0, 1, usual);
const count = (name: string, low: number, high: number, usual: number): CheckField => ({
  ...number(name, low, high, usual),
  isWhole: true,
});

/** The fields of every kind, for an editor and for reading. Usual values are common practice, no source. */
export const checkFields: Readonly<Record<CheckKind, readonly CheckField[]>> = {
  phraseLengths: [count('atLeast', 1, 20, 3)],
  phrasesOfBars: [number('bars', 0.5, 32, 2), count('atLeast', 1, 50, 2)],
  restShare: [share('atLeast', 0.1), share('atMost', 0.5)],
  mostlyValue: [
    { name: 'value', type: 'value', low: 0, high: 0, isWhole: false, usual: 'quaver' },
    share('share', 0.5),
    count('others', 0, 10, 1),
  ],
  valueVariety: [number('atLeastBits', 0, 4, 1.2)],
  syncopation: [share('atLeastShare', 0.1)],
  inScale: [share('atLeastShare', 0.9)],
  chordTones: [share('atLeastShare', 0.7)],
  evenTiming: [number('withinMs', 5, 200, 40)],
  keepsTempo: [number('withinPercent', 0.5, 30, 3)],
  swing: [number('from', 1, 4, 1.3), number('to', 1, 4, 2.2)],
  longNotes: [number('withinCents', 3, 100, 15), number('seconds', 0.5, 60, 4), count('times', 1, 50, 1)],
  inTune: [number('withinCents', 3, 100, 12)],
  dynamicRange: [number('atLeastDb', 1, 60, 10)],
  motif: [count('times', 2, 20, 3)],
  vibrato: [count('times', 1, 50, 2)],
};

/** Pairs of fields that bound something from below and from above. */
const bounds: Readonly<Partial<Record<CheckKind, readonly [string, string]>>> = {
  restShare: ['atLeast', 'atMost'],
  swing: ['from', 'to'],
};

/** The two fields of a check whose lower bound lies above its upper one; null when there are none. */
export function findCrossedBounds(spec: Readonly<Record<string, unknown>>): readonly [string, string] | null {
  const pair = Object.entries(bounds).find(([kind]) => kind === spec['kind'])?.[1];
  if (pair === undefined) return null;
  const [low, high] = [Number(spec[pair[0]]), Number(spec[pair[1]])];
  return low > high ? pair : null;
}

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
  const given = isFields(value) ? value : {};
  const kind = Object.keys(checkFields).find((known) => known === given['kind']) as CheckKind | undefined;
  if (kind === undefined)
    return unreadable(
      `its kind is ${String(given['kind'] ?? 'missing')}: use one of ${Object.keys(checkFields).join(', ')}`,
    );
  const fields = checkFields[kind];
  const stranger = Object.keys(given).find(
    (name) => name !== 'kind' && !fields.some((field) => field.name === name),
  );
  if (stranger !== undefined)
    return unreadable(
      `${stranger} is no field of ${kind}: it takes ${fields.map((field) => field.name).join(', ')}`,
    );
  const spec: Record<string, unknown> = { kind };
  for (const field of fields) {
    const told = given[field.name] ?? field.usual;
    if (field.type === 'value') {
      if (!checkableValues.some((known) => known === told))
        return unreadable(`${field.name} is ${String(told)}: use one of ${checkableValues.join(', ')}`);
    } else if (typeof told !== 'number' || !(told >= field.low && told <= field.high))
      return unreadable(
        `${field.name} is ${String(told)}: write a number from ${field.low} to ${field.high}`,
      );
    else if (field.isWhole && !Number.isInteger(told))
      return unreadable(`${field.name} is ${told}: write a whole number`);
    spec[field.name] = told;
  }
  const crossed = findCrossedBounds(spec);
  if (crossed !== null)
    return unreadable(`${crossed[0]} is more than ${crossed[1]}: write the smaller one first`);
  return ok(spec as CheckSpec); // every field of its kind has just been checked
}

function unreadable(problem: string): { ok: false; error: CheckUnreadable } {
  return err({ kind: 'CheckUnreadable', message: `A check cannot be read: ${problem}.` });
}
