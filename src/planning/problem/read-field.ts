// Small readers for the parser: each takes a field of a record out of unknown JSON or refuses it with its path. They
// stop at the first fault by throwing a private token that `readOrFault` turns into a Result; nothing else escapes.

import { err, type Fields, isDate, isFields, ok, type PlainDate, type Result } from '#core';
import type { ProblemFault, ProblemFaultKind } from './problem-fault.ts';

class Refusal {
  readonly fault: ProblemFault;
  constructor(fault: ProblemFault) {
    this.fault = fault;
  }
}

/** Runs a reader; a refusal inside it becomes the error of the Result. */
export function readOrFault<T>(read: () => T): Result<T, ProblemFault> {
  try {
    return ok(read());
  } catch (thrown) {
    if (thrown instanceof Refusal) return err(thrown.fault);
    throw thrown;
  }
}

/** Stops reading with a fault. */
export function refuse(kind: ProblemFaultKind, path: string, wrong: string, mend: string): never {
  throw new Refusal({ kind, path, wrong, mend });
}

/** A short, safe picture of any JSON value for a message. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  return String(value);
}

export function readRecord(value: unknown, path: string): Fields {
  if (isFields(value)) return value;
  return refuse(
    value === undefined ? 'MissingField' : 'WrongType',
    path,
    `is ${show(value)}`,
    'give an object { … }',
  );
}

export function readList(record: Fields, key: string, path: string, most: number): readonly unknown[] {
  const at = pathTo(path, key);
  const value = fieldOf(record, key);
  if (value === undefined)
    return refuse('MissingField', at, 'is missing', 'give a list [ … ], empty if need be');
  if (!Array.isArray(value)) return refuse('WrongType', at, `is ${show(value)}`, 'give a list [ … ]');
  if (value.length > most) refuse('TooMany', at, `has ${value.length} entries`, `give at most ${most}`);
  return value;
}

export interface Bounds {
  readonly low: number;
  readonly high: number;
  /** Stands in when the field is missing; without it the field is required. */
  readonly missing?: number;
}

export function readWhole(record: Fields, key: string, path: string, bounds: Bounds): number {
  const value = readNumber(record, key, path, bounds);
  if (!Number.isInteger(value)) refuse('OutOfRange', pathTo(path, key), `is ${value}`, 'give a whole number');
  return value;
}

export function readNumber(record: Fields, key: string, path: string, bounds: Bounds): number {
  const at = pathTo(path, key);
  const { low, high, missing } = bounds;
  const value = fieldOf(record, key);
  if (value === undefined && missing !== undefined) return missing;
  if (value === undefined)
    return refuse('MissingField', at, 'is missing', `give a number from ${low} to ${high}`);
  if (typeof value !== 'number' || Number.isNaN(value))
    return refuse('WrongType', at, `is ${show(value)}`, `give a number from ${low} to ${high}`);
  if (value < low || value > high)
    refuse('OutOfRange', at, `is ${value}`, `give a number from ${low} to ${high}`);
  return value === 0 ? 0 : value; // −0 is 0
}

export function readText(record: Fields, key: string, path: string, missing?: string): string {
  const at = pathTo(path, key);
  const value = fieldOf(record, key);
  if (value === undefined && missing !== undefined) return missing;
  if (value === undefined) return refuse('MissingField', at, 'is missing', 'give a short text');
  if (typeof value !== 'string') return refuse('WrongType', at, `is ${show(value)}`, 'give a short text');
  if (value === '' || value.length > 200)
    refuse('OutOfRange', at, value === '' ? 'is empty' : 'is very long', 'give 1 to 200 characters');
  return value;
}

export function readDay(record: Fields, key: string, path: string): PlainDate {
  const text = readText(record, key, path);
  if (isDate(text)) return text;
  return refuse(
    'NoSuchDate',
    pathTo(path, key),
    `is ${show(text)}, which is not a day of the calendar`,
    'write YYYY-MM-DD, 1900 to 2199',
  );
}

export const pathTo = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`);

/** Only the record's own fields: a file cannot borrow `constructor` from the language. */
export function fieldOf(record: Fields, key: string): unknown {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
