// The gate before any schema: whatever arrives becomes plain JSON data of bounded size, or one fault. After it nothing
// can recurse for ever, run a getter, or fail to be written as JSON and YAML and read back the same.

import { err, ok, type Result } from '#core';
import { formatFieldPath, type UnitFault } from './unit-fault.ts';

export type PlainValue =
  | string
  | number
  | boolean
  | null
  | readonly PlainValue[]
  | { readonly [key: string]: PlainValue };

const deepest = 24;
const mostValues = 60_000;
// Lone surrogates and control characters other than tab and line feed survive no round trip through a file.
const unprintable = /\p{Cs}|[^\P{Cc}\n\t]/u;

/** Copies any value into plain data, or says where it is not plain. Never throws, whatever the value does. */
export function plainValue(value: unknown): Result<PlainValue, UnitFault> {
  const path: PropertyKey[] = [];
  let left = mostValues;

  const refuse = (problem: string, mend: string): never => {
    throw new NotPlain({ kind: 'Shape', path: formatFieldPath(path), problem, mend });
  };
  const copyText = (text: string): string => {
    const clean = text.replaceAll('\r\n', '\n').replaceAll('\r', '\n');
    if (unprintable.test(clean))
      refuse('holds a control character or half of a character pair', 'Type the text again.');
    return clean;
  };
  const copy = (item: unknown): PlainValue => {
    if (path.length > deepest) refuse('is nested too deep', `Keep it within ${deepest} levels.`);
    if (--left < 0) refuse('holds too many values', `Keep the file under ${mostValues} values.`);
    if (item === null || typeof item === 'boolean') return item;
    if (typeof item === 'string') return copyText(item);
    if (typeof item === 'number') {
      if (!Number.isFinite(item)) refuse(`is ${item}`, 'Write an ordinary number, such as 4 or 0.5.');
      return item === 0 ? 0 : item; // no negative zero: JSON drops its sign
    }
    if (Array.isArray(item)) {
      const list: PlainValue[] = [];
      for (let i = 0; i < item.length; i++) {
        path.push(i);
        list.push(copy(item[i]));
        path.pop();
      }
      return list;
    }
    if (typeof item !== 'object' || !isPlainObject(item))
      return refuse(
        `is a ${typeof item === 'object' ? 'special object' : typeof item}`,
        'Use text, numbers, true or false, lists and fields.',
      );
    const fields: Record<string, PlainValue> = {};
    for (const [key, field] of Object.entries(item)) {
      if (field === undefined) continue;
      path.push(copyText(key));
      if (key === '__proto__') refuse('is a name that no field may have', 'Rename it.');
      fields[copyText(key)] = copy(field);
      path.pop();
    }
    return fields;
  };

  try {
    return ok(copy(value));
  } catch (thrown) {
    if (thrown instanceof NotPlain) return err(thrown.fault);
    // A getter or proxy of the value itself threw; there is nothing to say about it but that.
    return err({
      kind: 'Shape',
      path: formatFieldPath(path),
      problem: 'cannot be read',
      mend: 'Use plain data.',
    });
  }
}

class NotPlain {
  readonly fault: UnitFault;
  constructor(fault: UnitFault) {
    this.fault = fault;
  }
}

function isPlainObject(item: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(item);
  return prototype === Object.prototype || prototype === null;
}
