// How a typed failure becomes an HTTP answer. Exhaustive: a new kind of fault does not compile until it has a status.

import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { ZodError } from 'zod';
import type { Fault } from '#contract';

const statusByKind: { readonly [K in Fault['kind']]: ContentfulStatusCode } = {
  Invalid: 422,
  NotFound: 404,
  ChangedElsewhere: 409,
  NotAllowedNow: 409,
  NotEmpty: 409,
  NotSignedIn: 401,
  TooLarge: 413,
  CannotKeep: 507,
  Broken: 500,
};

/** Answers a refusal with the status of its kind. */
export const refuse = (c: Context, fault: Fault) => c.json({ fault }, statusByKind[fault.kind]);

/** What is wrong with a request body, field by field: the first in the message, the others as details. */
export function faultOfIssues(error: ZodError): Fault {
  const [first = '', ...others] = error.issues.slice(0, 20).map(sayIssue);
  const field = error.issues[0]?.path.map(String).join('.') ?? '';
  return {
    kind: 'Invalid',
    message: `Nothing was kept. ${first}`.trim(),
    ...(field === '' ? {} : { field }),
    ...(others.length === 0 ? {} : { details: others }),
  };
}

/** `command.name`, `must be 120 characters or fewer` → `The name must be 120 characters or fewer.` */
function sayIssue({ path, message }: ZodError['issues'][number]): string {
  const field = path.filter((step) => typeof step === 'string' && step !== 'command').at(-1);
  if (field === undefined) return message;
  const where = String(field)
    .replaceAll(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter}`)
    .toLowerCase();
  return message.startsWith('must ') ? `The ${where} ${message}.` : `The ${where}: ${message}.`;
}
