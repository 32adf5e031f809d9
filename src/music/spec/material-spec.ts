// A material spec: small, typed and serialisable. Everything else about a sheet is computed from it and the student.

import { err, isFields, nearestWord, ok, type Result } from '#core';
import type { Field, SpecOf } from './field.ts';
import {
  arpeggioFields,
  chartFields,
  lineFields,
  phraseFields,
  readingFields,
  rhythmFields,
  scaleFields,
} from './material-fields.ts';
import { pictureOf, type SpecFault, specFault } from './spec-fault.ts';

export type ScaleSpec = { readonly kind: 'scale' } & SpecOf<typeof scaleFields>;
export type ArpeggioSpec = { readonly kind: 'arpeggio' } & SpecOf<typeof arpeggioFields>;
export type RhythmSpec = { readonly kind: 'rhythm' } & SpecOf<typeof rhythmFields>;
export type PhraseSpec = { readonly kind: 'phrase' } & SpecOf<typeof phraseFields>;
export type LineSpec = { readonly kind: 'line' } & SpecOf<typeof lineFields>;
export type ReadingSpec = { readonly kind: 'reading' } & SpecOf<typeof readingFields>;
export type ChartSpec = { readonly kind: 'chart' } & SpecOf<typeof chartFields>;

/** Everything that makes a sheet. Backing tracks make sound and have a kind of their own. */
export type MaterialSpec =
  | ScaleSpec
  | ArpeggioSpec
  | RhythmSpec
  | PhraseSpec
  | LineSpec
  | ReadingSpec
  | ChartSpec;
export type MaterialKind = MaterialSpec['kind'];

export const materialKinds = [
  'scale',
  'arpeggio',
  'rhythm',
  'phrase',
  'line',
  'reading',
  'chart',
] as const satisfies readonly MaterialKind[];

/** Fields by name. */
export type FieldTable = Readonly<Record<string, Field<unknown>>>;

/** The fields of each kind, `kind` itself left out. */
export const fieldsByKind: Readonly<Record<MaterialKind, FieldTable>> = {
  scale: scaleFields,
  arpeggio: arpeggioFields,
  rhythm: rhythmFields,
  phrase: phraseFields,
  line: lineFields,
  reading: readingFields,
  chart: chartFields,
};

/** A field name as part of a JSON pointer. */
const pointerTo = (name: string): string => `/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;

/** Reads one kind's fields, defaults filled in. */
export function readFields<const Fields extends FieldTable>(
  fields: Fields,
  record: Readonly<Record<string, unknown>>,
): Result<SpecOf<Fields>, SpecFault> {
  const names = Object.keys(fields);
  for (const name of Object.keys(record)) {
    if (name === 'kind' || names.includes(name)) continue;
    const nearest = nearestWord(name, names);
    return err(specFault('UnknownField', pointerTo(name), 'is no field of this kind', nearest));
  }
  const spec: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const value = Object.hasOwn(record, name) ? record[name] : undefined;
    if (value === undefined && field.fallback === undefined) {
      const nearest = name === 'chart' ? '| C |' : null;
      return err(specFault('MissingField', pointerTo(name), 'is missing', nearest));
    }
    const read = value === undefined ? ok(field.fallback) : field.read(value, pointerTo(name));
    if (!read.ok) return read;
    spec[name] = read.value;
  }
  return ok(spec as SpecOf<Fields>); // every field has just been read by its own reader
}

const withKind = <Kind extends MaterialKind, Rest>(kind: Kind, read: Result<Rest, SpecFault>) =>
  read.ok ? ok({ kind, ...read.value }) : read;

function readKind(
  kind: MaterialKind,
  record: Readonly<Record<string, unknown>>,
): Result<MaterialSpec, SpecFault> {
  switch (kind) {
    case 'scale':
      return withKind(kind, readFields(scaleFields, record));
    case 'arpeggio':
      return withKind(kind, readFields(arpeggioFields, record));
    case 'rhythm':
      return withKind(kind, readFields(rhythmFields, record));
    case 'phrase':
      return withKind(kind, readFields(phraseFields, record));
    case 'line':
      return withKind(kind, readFields(lineFields, record));
    case 'reading':
      return withKind(kind, readFields(readingFields, record));
    case 'chart':
      return withKind(kind, readFields(chartFields, record));
  }
}

/**
 * Reads a material spec out of JSON; fields left out get their defaults. A fault names the field, what is wrong and the
 * nearest value that would do. `parseMaterialSpec({ kind: 'scale', octaves: 9 })` → fault at `/octaves`, nearest 4
 */
export function parseMaterialSpec(value: unknown): Result<MaterialSpec, SpecFault> {
  if (!isFields(value))
    return err(specFault('WrongType', '', `is ${pictureOf(value)}, not an object { … }`, null));
  const given = Object.hasOwn(value, 'kind') ? value['kind'] : undefined;
  if (given === undefined)
    return err(
      specFault('MissingField', '/kind', `is missing: give one of ${materialKinds.join(', ')}`, 'scale'),
    );
  const kind = materialKinds.find((k) => k === given);
  if (kind !== undefined) return readKind(kind, value);
  if (given === 'backing')
    return err(specFault('NotAChoice', '/kind', 'is “backing”, which makes sound and no sheet', 'chart'));
  const nearest = typeof given === 'string' ? nearestWord(given, materialKinds) : 'scale';
  return err(specFault('NotAChoice', '/kind', `is ${pictureOf(given)}, no kind of sheet`, nearest));
}
