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
  Broken: 500,
};

/** Answers a refusal with the status of its kind. */
export const refuse = (c: Context, fault: Fault) => c.json({ fault }, statusByKind[fault.kind]);

/** What is wrong with a request body, field by field. */
export function faultOfIssues(error: ZodError): Fault {
  const sentences = error.issues.slice(0, 20).map((issue) => {
    const where = issue.path.map(String).join('.');
    return where === '' ? issue.message : `${where}: ${issue.message}`;
  });
  const field = error.issues[0]?.path.map(String).join('.') ?? '';
  return {
    kind: 'Invalid',
    message: `The request could not be read. ${sentences[0] ?? ''}`.trim(),
    ...(field === '' ? {} : { field }),
    details: sentences,
  };
}
