// Which control a field of a spec gets, read off its published schema, so that a field the specs gain is shaped here at once.

import type { MaterialKind } from '#music';
import { fieldsByKind } from '#music';

export type FieldControl =
  /** One of some words and numbers, in order. */
  | { readonly kind: 'choice'; readonly values: readonly (string | number)[] }
  | { readonly kind: 'tick' }
  /** Several of some words; none means `fit`. */
  | { readonly kind: 'several'; readonly values: readonly string[] }
  /** A number that is typed; empty means `fit`. */
  | { readonly kind: 'number'; readonly low: number; readonly high: number }
  /** Whole numbers with blanks between. */
  | { readonly kind: 'list' }
  /** A short text; empty means null. */
  | { readonly kind: 'text' }
  /** Several lines of text: a chart or a tune. */
  | { readonly kind: 'lines' };

/** More numbers than this are typed, not chosen. */
const mostChoices = 40;
const tonics = ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F'];
const shares = [0, 0.1, 0.2, 0.35];

type Schema = Readonly<Record<string, unknown>>;

const partsOf = (schema: Schema): readonly Schema[] =>
  Array.isArray(schema['anyOf']) ? (schema['anyOf'] as readonly Schema[]) : [schema]; // fields publish JSON Schema

/** The control for a field of a kind. */
export function fieldControl(kind: MaterialKind, name: string): FieldControl {
  if (name === 'chart' || name === 'melody') return { kind: 'lines' };
  const schema = fieldsByKind[kind][name]?.schema ?? {};
  const parts = partsOf(schema);
  const words = parts.flatMap((part) => (Array.isArray(part['enum']) ? part['enum'].map(String) : []));
  const number = parts.find((part) => part['type'] === 'integer' || part['type'] === 'number');
  const array = parts.find((part) => part['type'] === 'array');
  if (array !== undefined) {
    const items = array['items'] as Schema; // an array in these schemas always has its items
    return Array.isArray(items['enum'])
      ? { kind: 'several', values: items['enum'].map(String) }
      : { kind: 'list' };
  }
  if (number !== undefined) {
    const low = Number(number['minimum']);
    const high = Number(number['maximum']);
    if (number['type'] === 'number') return { kind: 'choice', values: [...words, ...shares] };
    if (high - low >= mostChoices) return { kind: 'number', low, high };
    return {
      kind: 'choice',
      values: [...words, ...Array.from({ length: high - low + 1 }, (_, i) => low + i)],
    };
  }
  if (words.length > 0) return { kind: 'choice', values: words };
  if (schema['type'] === 'boolean') return { kind: 'tick' };
  if (typeof schema['pattern'] === 'string' && schema['pattern'].includes('[A-G]'))
    return { kind: 'choice', values: ['fit', ...tonics] };
  return { kind: 'text' };
}

/** The fields that shape a kind most, shown first. */
export const mainFields: Readonly<Record<MaterialKind, readonly string[]>> = {
  scale: ['scale', 'start', 'keys', 'octaves', 'pattern', 'value'],
  arpeggio: ['quality', 'start', 'keys', 'octaves', 'pattern', 'value'],
  rhythm: ['grade', 'metre', 'lines', 'bars', 'on'],
  phrase: ['play', 'rest', 'content', 'chart', 'scale', 'start'],
  line: ['chart', 'content', 'key', 'feel', 'choruses'],
  reading: ['key', 'mode', 'grade', 'compass', 'lines'],
  chart: ['chart', 'style', 'key', 'bars', 'feel'],
};

/** All other fields of a kind, in the order of its table. */
export function furtherFields(kind: MaterialKind): readonly string[] {
  return Object.keys(fieldsByKind[kind]).filter((name) => !mainFields[kind].includes(name));
}
