// JSON that a person writes (ECMA-404, second edition): where it breaks, and where it says a field twice. Engines word and
// place their own errors differently, some without a place, and of a field said twice they take the last without a word
// (RFC 8259, section 4: names SHOULD be unique; what a reader does otherwise is unpredictable).

import { err, ok, type Result } from './result.ts';

export interface JsonFault {
  readonly kind: 'JsonUnreadable';
  /** Completes "the file …": `says "title" twice`. */
  readonly problem: string;
  /** A sentence: `Keep one of the two.` */
  readonly mend: string;
  /** From 1. */
  readonly line: number;
  readonly column: number;
  /** It is at the very end: the text may have been cut off. */
  readonly atEnd: boolean;
}

/**
 * The value of a JSON text written by hand. Never throws. A mark of byte order before it is no part of it.
 * `parseJson('{"a": 1, "a": 2}')` → a fault at line 1, column 10: says "a" twice
 */
export function parseJson(text: string): Result<unknown, JsonFault> {
  const body = text.replace(/^\uFEFF/, '');
  const flaw = findJsonFlaw(body);
  if (flaw === null) return ok(JSON.parse(body));
  const lines = body.slice(0, flaw.offset).split('\n');
  const place = {
    line: lines.length,
    column: (lines.at(-1)?.length ?? 0) + 1,
    atEnd: flaw.offset === body.length,
  };
  return flaw.kind === 'twice'
    ? err({
        kind: 'JsonUnreadable',
        problem: `says "${flaw.name}" twice`,
        mend: 'Keep one of the two.',
        ...place,
      })
    : err({ kind: 'JsonUnreadable', problem: 'is not JSON', mend: `Put ${flaw.wanted} here.`, ...place });
}

/** `formatJsonFault('unit.json', fault)` → `unit.json (line 3, column 12) is not JSON. Put a colon here.` */
export const formatJsonFault = (file: string, { line, column, problem, mend }: JsonFault): string =>
  `${file} (line ${line}, column ${column}) ${problem}. ${mend}`;

/** `offset` counts from 0, in UTF-16 units. */
export type JsonFlaw =
  | { readonly kind: 'break'; readonly offset: number; readonly wanted: string }
  | { readonly kind: 'twice'; readonly offset: number; readonly name: string };

/**
 * The first place at which a text stops being JSON or says a field of an object again, or null. `[1,]` → offset 3, wanted
 * `a value`
 */
export function findJsonFlaw(text: string): JsonFlaw | null {
  const open: ('[' | '{')[] = [];
  /** The names said in each open object. */
  const names: Set<string>[] = [];
  let at = 0;
  let state: 'value' | 'first' | 'key' | 'first-key' | 'after' = 'value';
  const space = /[ \t\n\r]*/y;
  const word = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?|true|false|null/y;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found === null) return false;
    at += found[0].length;
    return true;
  };

  const takeString = (): boolean => {
    if (text[at] !== '"') return false;
    for (at++; at < text.length; at++) {
      const sign = text[at] ?? '';
      if (sign === '"') {
        at++;
        return true;
      }
      if (sign < ' ') return false;
      if (sign === '\\') {
        const escaped = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y;
        at++;
        if (!take(escaped)) return false;
        at--;
      }
    }
    return false;
  };

  const close = () => {
    if (open.pop() === '{') names.pop();
  };
  const broken = (wanted: string): JsonFlaw => ({ kind: 'break', offset: at, wanted });

  for (;;) {
    take(space);
    const sign = text[at];
    if (state === 'after') {
      const inside = open.at(-1);
      if (inside === undefined) return at === text.length ? null : broken('the end');
      if (sign === ',') state = inside === '[' ? 'value' : 'key';
      else if (sign === (inside === '[' ? ']' : '}')) close();
      else return broken(inside === '[' ? 'a comma or ]' : 'a comma or }');
      at++;
    } else if (state === 'key' || state === 'first-key') {
      if (state === 'first-key' && sign === '}') {
        close();
        at++;
        state = 'after';
        continue;
      }
      const start = at;
      if (!takeString()) return broken('a field name in double quotes');
      // The same name may be written in two ways: "a" and "\u0061".
      const written = text.slice(start, at);
      const name = written.includes('\\') ? String(JSON.parse(written)) : written.slice(1, -1);
      const said = names.at(-1);
      if (said?.has(name)) return { kind: 'twice', offset: start, name };
      said?.add(name);
      take(space);
      if (text[at] !== ':') return broken('a colon');
      at++;
      state = 'value';
    } else if (state === 'first' && sign === ']') {
      close();
      at++;
      state = 'after';
    } else if (sign === '[' || sign === '{') {
      open.push(sign);
      if (sign === '{') names.push(new Set());
      at++;
      state = sign === '[' ? 'first' : 'first-key';
    } else if (sign === '"' ? takeString() : take(word)) {
      state = 'after';
    } else {
      return broken(sign === '"' ? 'a sign that text may hold, or the closing quote,' : 'a value');
    }
  }
}
