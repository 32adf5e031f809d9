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
  const parsed = schema.safeParse(value);
  return parsed.success ? ok(parsed.data) : err(faultOfIssues(parsed.error));
}
