// Random damage to a planning problem's JSON, for the fuzz: fields deleted, retyped, disturbed, swapped; structure broken.

import { type Random, randomInteger } from '#core';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const oddValues: readonly Json[] = [
  null,
  true,
  '',
  'NaN',
  'Infinity',
  '12',
  '2026-02-30',
  '__proto__',
  0,
  -1,
  1,
  0.5,
  1e9,
  -1e308,
  2 ** 53,
  1e-300,
  [],
  {},
  [[]],
  { id: 'x' },
];

/** Changes the value in place, one to four times; returns it (or garbage in its place). */
export function mutateProblem(problem: unknown, random: Random): unknown {
  const root = problem as Json;
  if (random.next() < 0.01) return oddValues[randomInteger(random, 0, oddValues.length - 1)];
  for (let n = random.next() < 0.6 ? 1 : randomInteger(random, 2, 4); n > 0; n--) mutateOnce(root, random);
  return root;
}

function mutateOnce(root: Json, random: Random): void {
  const { parent, key } = findSpot(root, random);
  if (parent === null) return;
  const value = (parent as Record<string, Json>)[key] ?? null;
  const draw = random.next();
  if (typeof value === 'number' && draw < 0.7) put(parent, key, disturbed(value, random));
  else if (Array.isArray(value) && draw < 0.5) shuffleList(value, random);
  else if (draw < 0.8) put(parent, key, oddValues[randomInteger(random, 0, oddValues.length - 1)] ?? null);
  else if (draw < 0.9 && !Array.isArray(parent)) delete (parent as Record<string, Json>)[key];
  else swapWithin(parent, key, random);
}

/** Walks down at random: some container and one of its keys. */
function findSpot(root: Json, random: Random): { readonly parent: Json | null; readonly key: string } {
  let parent: Json | null = null;
  let key = '';
  let here: Json = root;
  while (typeof here === 'object' && here !== null) {
    const keys: string[] = Object.keys(here);
    const next: string | undefined = keys[randomInteger(random, 0, keys.length - 1)];
    if (next === undefined || (parent !== null && random.next() < 0.12)) break;
    parent = here;
    key = next;
    here = (here as Record<string, Json>)[next] ?? null;
  }
  return { parent, key };
}

function put(parent: Json, key: string, value: Json): void {
  (parent as Record<string, Json>)[key] = structuredClone(value);
}

function disturbed(value: number, random: Random): number {
  const draw = random.next();
  if (draw < 0.5) return value + randomInteger(random, -3, 3);
  if (draw < 0.7) return value * randomInteger(random, 0, 4);
  if (draw < 0.8) return -value;
  if (draw < 0.9) return value + random.next();
  return randomInteger(random, 0, 300);
}

function shuffleList(list: Json[], random: Random): void {
  const draw = random.next();
  const at = randomInteger(random, 0, Math.max(0, list.length - 1));
  const other = randomInteger(random, 0, Math.max(0, list.length - 1));
  if (list.length === 0) list.push('A0');
  else if (draw < 0.3) list.splice(at, 1);
  else if (draw < 0.5) list.push(structuredClone(list[at] ?? null));
  else if (draw < 0.6) list.length = 0;
  else [list[at], list[other]] = [list[other] ?? null, list[at] ?? null];
}

function swapWithin(parent: Json, key: string, random: Random): void {
  const record = parent as Record<string, Json>;
  const keys = Object.keys(record);
  const other = keys[randomInteger(random, 0, keys.length - 1)] ?? key;
  [record[key], record[other]] = [record[other] ?? null, record[key] ?? null];
}
