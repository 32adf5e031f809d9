// Reads a JSON body into a checked value, or says what is wrong with it.

import type { Context } from 'hono';
import type { z } from 'zod';
import type { Fault } from '#contract';
import { err, ok, type Result } from '#core';
import { faultOfIssues } from './answer.ts';

/** The body, parsed by the schema. */
export async function readBody<S extends z.ZodType>(
  c: Context,
  schema: S,
): Promise<Result<z.infer<S>, Fault>> {
  let value: unknown;
  try {
    value = await c.req.json();
  } catch {
    return err({ kind: 'Invalid', message: 'The request is not JSON.' });
  }
  if (isDeeperThan(value, deepest))
    return err({ kind: 'Invalid', message: `The request is nested deeper than ${deepest} levels.` });
  if (unstorable.test(JSON.stringify(value)))
    return err({
      kind: 'Invalid',
      message:
        'A text holds a character that cannot be kept (a NUL, or half of a pair). Remove it; it may come from pasting.',
    });
  const parsed = schema.safeParse(value);
  return parsed.success ? ok(parsed.data) : err(faultOfIssues(parsed.error));
}

/** A unit's document is the deepest thing sent, well below this; what goes on for ever would end in a stack overflow. */
const deepest = 100;

const isDeeperThan = (value: unknown, levels: number): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (levels === 0 || Object.values(value).some((inner) => isDeeperThan(inner, levels - 1)));

/** NUL and lone surrogates as JSON writes them; no database of ours keeps both. */
const unstorable = /(?<!\\)(?:\\\\)*\\u(?:0000|d[89a-f][0-9a-f]{2})/;
