// Ids are branded and prefixed (`student:x7k2…`): one kind cannot be passed for another, and a stray id says what it is.

import { type Random, randomInteger } from './random.ts';

export type Brand<Name extends string> = { readonly __brand: Name };
export type Id<Prefix extends string> = `${Prefix}:${string}` & Brand<Prefix>;

const alphabet = '0123456789abcdefghjkmnpqrstvwxyz'; // Crockford's base 32: no i, l, o, u to misread
const length = 16; // 80 bits

/** A fresh id. `createId('student', random)` → `student:6h2k9v0c4m8qz1rt` (for example) */
export function createId<Prefix extends string>(prefix: Prefix, random: Random): Id<Prefix> {
  let tail = '';
  for (let i = 0; i < length; i++) tail += alphabet[randomInteger(random, 0, 31)];
  return `${prefix}:${tail}` as Id<Prefix>;
}

/** Whether a text is an id of this kind: the prefix, a colon, then 1 to 80 of a-z, 0-9 and hyphens. */
export function isId<Prefix extends string>(prefix: Prefix, text: string): text is Id<Prefix> {
  return text.startsWith(`${prefix}:`) && /^[a-z0-9-]{1,80}$/.test(text.slice(prefix.length + 1));
}
