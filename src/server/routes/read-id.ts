// Reads the id in an address, or says that there is no such thing.

import type { Context } from 'hono';
import type { Fault } from '#contract';
import { err, type Id, isId, ok, type Result } from '#core';

/** The `:id` of the route, when it is an id of this kind. */
export function readId<P extends string>(c: Context, prefix: P): Result<Id<P>, Fault> {
  const text = c.req.param('id') ?? '';
  if (isId(prefix, text)) return ok(text);
  return err({ kind: 'NotFound', message: `"${text.slice(0, 100)}" is not the id of a ${prefix}.` });
}
