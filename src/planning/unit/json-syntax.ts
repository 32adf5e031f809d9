// Where a JSON text breaks (ECMA-404, second edition). Engines word and place their own errors differently, some without a place.

export interface JsonBreak {
  /** From 0, in UTF-16 units. */
  readonly offset: number;
  readonly wanted: string;
}

/** The first place at which a text stops being JSON, or null when it is JSON. `[1,]` → offset 3, wanted `a value` */
export function findJsonBreak(text: string): JsonBreak | null {
  const open: ('[' | '{')[] = [];
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

  for (;;) {
    take(space);
    const sign = text[at];
    if (state === 'after') {
      const inside = open.at(-1);
      if (inside === undefined) return at === text.length ? null : { offset: at, wanted: 'the end' };
      if (sign === ',') state = inside === '[' ? 'value' : 'key';
      else if (sign === (inside === '[' ? ']' : '}')) open.pop();
      else return { offset: at, wanted: inside === '[' ? 'a comma or ]' : 'a comma or }' };
      at++;
    } else if (state === 'key' || state === 'first-key') {
      if (state === 'first-key' && sign === '}') {
        open.pop();
        at++;
        state = 'after';
        continue;
      }
      if (!takeString()) return { offset: at, wanted: 'a field name in double quotes' };
      take(space);
      if (text[at] !== ':') return { offset: at, wanted: 'a colon' };
      at++;
      state = 'value';
    } else if (state === 'first' && sign === ']') {
      open.pop();
      at++;
      state = 'after';
    } else if (sign === '[' || sign === '{') {
      open.push(sign);
      at++;
      state = sign === '[' ? 'first' : 'first-key';
    } else if (sign === '"' ? takeString() : take(word)) {
      state = 'after';
    } else {
      return {
        offset: at,
        wanted: sign === '"' ? 'a sign that text may hold, or the closing quote,' : 'a value',
      };
    }
  }
}
