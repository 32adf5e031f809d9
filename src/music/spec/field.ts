// Fields of a spec as data: one description gives the reader, the type, the default and the published JSON Schema.

import { err, nearestWord, ok, type Result } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { formatPitchName, parsePitchName } from '../pitch/pitch.ts';
import { type JsonValue, pictureOf, type SpecFault, specFault } from './spec-fault.ts';

export type JsonSchema = Readonly<Record<string, unknown>>;

export interface Field<T> {
  /** One sentence for whoever writes a spec by hand. */
  readonly about: string;
  /** Stands in when the field is left out; `undefined` makes it required. */
  readonly fallback: T | undefined;
  read(value: unknown, at: string): Result<T, SpecFault>;
  readonly schema: JsonSchema;
}

/** What a table of fields reads to. */
export type SpecOf<Fields extends Readonly<Record<string, Field<unknown>>>> = {
  readonly [Key in keyof Fields]: Fields[Key] extends Field<infer T> ? T : never;
};

const wrongType = (value: unknown, wanted: string, at: string, nearest: JsonValue) =>
  err(specFault('WrongType', at, `is ${pictureOf(value)}, not ${wanted}`, nearest));

/** One of some words. */
export function choice<const Word extends string>(
  words: readonly Word[],
  fallback: Word,
  about: string,
): Field<Word> {
  return {
    about,
    fallback,
    schema: { enum: words },
    read(value, at) {
      const word = words.find((w) => w === value);
      if (word !== undefined) return ok(word);
      if (typeof value !== 'string') return wrongType(value, 'one of its words', at, fallback);
      const nearest = nearestWord(value, words);
      return err(
        specFault('NotAChoice', at, `is ${pictureOf(value)}, which is not one of its words`, nearest),
      );
    },
  };
}

/** A whole number in a span, or one of some words. `wholeOr(['fit'], 1, 4, 'fit', …)` */
export function wholeOr<const Word extends string>(
  words: readonly Word[],
  low: number,
  high: number,
  fallback: Word | number,
  about: string,
): Field<Word | number> {
  const number = { type: 'integer', minimum: low, maximum: high };
  const wanted = `a whole number from ${low} to ${high}`;
  return {
    about,
    fallback,
    schema: words.length === 0 ? number : { anyOf: [{ enum: words }, number] },
    read(value, at) {
      const word = words.find((w) => w === value);
      if (word !== undefined) return ok(word);
      if (typeof value === 'string' && words.length > 0) {
        const typed = Number(value);
        const nearest =
          Number.isInteger(typed) && typed >= low && typed <= high ? typed : nearestWord(value, words);
        return err(specFault('NotAChoice', at, `is ${pictureOf(value)}, not ${wanted}`, nearest));
      }
      if (typeof value !== 'number' || !Number.isFinite(value)) return wrongType(value, wanted, at, fallback);
      const nearest = Math.min(high, Math.max(low, Math.round(value)));
      if (nearest !== value) return err(specFault('OutOfRange', at, `is ${value}, not ${wanted}`, nearest));
      return ok(value);
    },
  };
}

/** A whole number in a span. */
export function whole(low: number, high: number, fallback: number, about: string): Field<number> {
  const field = wholeOr([], low, high, fallback, about);
  return { ...field, fallback };
}

/** A share from 0 to `high`, or `fit`. */
export function shareOrFit(high: number, about: string): Field<'fit' | number> {
  return {
    about,
    fallback: 'fit',
    schema: { anyOf: [{ enum: ['fit'] }, { type: 'number', minimum: 0, maximum: high }] },
    read(value, at) {
      if (value === 'fit') return ok('fit');
      if (typeof value !== 'number' || Number.isNaN(value))
        return wrongType(value, `a number from 0 to ${high}`, at, 'fit');
      const nearest = Math.min(high, Math.max(0, value));
      if (nearest !== value)
        return err(specFault('OutOfRange', at, `is ${value}, not from 0 to ${high}`, nearest));
      return ok(value === 0 ? 0 : value); // −0 is 0
    },
  };
}

/** True or false. */
export function flag(fallback: boolean, about: string): Field<boolean> {
  return {
    about,
    fallback,
    schema: { type: 'boolean' },
    read: (value, at) =>
      typeof value === 'boolean' ? ok(value) : wrongType(value, 'true or false', at, fallback),
  };
}

const longestText = 120;

/** A short text, or null. */
export function textOrNull(about: string): Field<string | null> {
  return {
    about,
    fallback: null,
    schema: { anyOf: [{ type: 'string', minLength: 1, maxLength: longestText }, { type: 'null' }] },
    read(value, at) {
      if (value === null) return ok(null);
      if (typeof value !== 'string') return wrongType(value, 'a short text', at, null);
      // A title goes into XML: control characters have no place there.
      const clean = [...value]
        .filter((c) => c >= ' ' && c !== '\u007f')
        .join('')
        .trim();
      if (clean.length > longestText)
        return err(
          specFault('OutOfRange', at, `has more than ${longestText} characters`, clean.slice(0, longestText)),
        );
      return ok(clean === '' ? null : clean);
    },
  };
}

const longestChart = 4000;

function readChart(value: string, at: string): Result<string, SpecFault> {
  if (value.length > longestChart)
    return err(specFault('OutOfRange', at, `has more than ${longestChart} characters`, null));
  const chart = parseChart(value);
  if (chart.ok) {
    if (chart.value.bars.length <= 128) return ok(value);
    return err(specFault('OutOfRange', at, 'has more than 128 bars', null));
  }
  const { message, nearest } = chart.error;
  return err({ kind: 'Unreadable', at, wrong: message, nearest, message: `“${at.slice(1)}”: ${message}` });
}

const chartSchema = { type: 'string', minLength: 1, maxLength: longestChart };

/** A chart as musicians type it, required. */
export function chartText(about: string): Field<string> {
  return {
    about,
    fallback: undefined,
    schema: chartSchema,
    read: (value, at) =>
      typeof value === 'string' ? readChart(value, at) : wrongType(value, 'a chart', at, '| C |'),
  };
}

/** A chart as musicians type it, or null. */
export function chartOrNull(about: string): Field<string | null> {
  return {
    about,
    fallback: null,
    schema: { anyOf: [chartSchema, { type: 'null' }] },
    read(value, at) {
      if (value === null) return ok(null);
      return typeof value === 'string' ? readChart(value, at) : wrongType(value, 'a chart', at, null);
    },
  };
}

/** `fit`, or a note name with at most one accidental: `Bb`, `F#`. Written back with b and #. */
export function tonicOrFit(about: string): Field<string> {
  return {
    about,
    fallback: 'fit',
    schema: { type: 'string', pattern: '^(fit|[A-G][b#]?)$' },
    read(value, at) {
      if (value === 'fit') return ok('fit');
      if (typeof value !== 'string') return wrongType(value, 'a note name', at, 'fit');
      const name = parsePitchName(value);
      if (name !== null && Math.abs(name.alter) <= 1) return ok(formatPitchName(name));
      const letter = /[A-Ga-g]/.exec(value)?.[0]?.toUpperCase() ?? 'fit';
      return err(
        specFault('NotAChoice', at, `is ${pictureOf(value)}, not a note name like C, Bb or F#`, letter),
      );
    },
  };
}

/** A list of whole numbers, 1 to 8 of them. */
export function wholes(
  low: number,
  high: number,
  fallback: readonly number[],
  about: string,
): Field<readonly number[]> {
  const one = whole(low, high, low, about);
  return {
    about,
    fallback,
    schema: { type: 'array', minItems: 1, maxItems: 8, items: one.schema },
    read(value, at) {
      if (!Array.isArray(value)) return wrongType(value, 'a list of whole numbers', at, fallback);
      if (value.length < 1 || value.length > 8)
        return err(
          specFault(
            'OutOfRange',
            at,
            `has ${value.length} entries, not 1 to 8`,
            value.length < 1 ? fallback : null,
          ),
        );
      const read: number[] = [];
      for (const [i, entry] of value.entries()) {
        const number = one.read(entry, `${at}/${i}`);
        if (!number.ok) return number;
        read.push(number.value);
      }
      return ok(read);
    },
  };
}

/** `fit`, or a list of some words, each once. */
export function wordsOrFit<const Word extends string>(
  words: readonly Word[],
  about: string,
): Field<'fit' | readonly Word[]> {
  return {
    about,
    fallback: 'fit',
    schema: {
      anyOf: [{ enum: ['fit'] }, { type: 'array', minItems: 1, uniqueItems: true, items: { enum: words } }],
    },
    read(value, at) {
      if (value === 'fit') return ok('fit');
      if (!Array.isArray(value)) return wrongType(value, 'a list of its words', at, 'fit');
      if (value.length === 0) return err(specFault('OutOfRange', at, 'is empty', 'fit'));
      for (const [i, entry] of value.entries()) {
        if (words.some((word) => word === entry)) continue;
        const nearest = typeof entry === 'string' ? nearestWord(entry, words) : (words[0] ?? null);
        return err(
          specFault(
            'NotAChoice',
            `${at}/${i}`,
            `is ${pictureOf(entry)}, which is not one of its words`,
            nearest,
          ),
        );
      }
      return ok(words.filter((word) => value.includes(word)));
    },
  };
}
