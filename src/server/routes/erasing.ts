// A student's own file, what erasing them would come to, and the erasing in the copies beside the studio.

import type { Context } from 'hono';
import { type CommandOf, type ErasureView, otherNamesSchema, type Send } from '#contract';
import { eraseInCopy, loadStudentFile, viewErasure } from '#studio';
import { faultOfIssues, refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';
import { download } from './files.ts';
import { readId } from './read-id.ts';

const missing = {
  kind: 'NotFound',
  message: 'There is no such student any more; they may have been removed, or erased for good.',
} as const;

export const getErasure = (server: ServerContext) => async (c: Context) => {
  const id = readId(c, 'student');
  if (!id.ok) return refuse(c, id.error);
  const called = otherNamesSchema.safeParse(c.req.queries('called') ?? []);
  if (!called.success) return refuse(c, faultOfIssues(called.error));
  const found = await server.store.read((reader) => viewErasure(reader, id.value, called.data));
  if (found === null) return refuse(c, missing);
  const copies = server.copies?.listCopies() ?? null;
  return c.json({
    ...found,
    copies:
      copies === null
        ? null
        : { files: copies.length, oldest: copies[0]?.day ?? null, newest: copies.at(-1)?.day ?? null },
  } satisfies ErasureView);
};

export const getStudentFile = (server: ServerContext) => async (c: Context) => {
  const id = readId(c, 'student');
  if (!id.ok) return refuse(c, id.error);
  const file = await server.store.read((reader) => loadStudentFile(reader, id.value));
  if (file === null) return refuse(c, missing);
  const { clock } = await server.outside();
  return download(c, `student-${clock.today()}.json`, 'application/json', JSON.stringify(file, null, 1));
};

/** Erases in the copies what was erased in the studio, if that was asked for; sentences on those in which it could not be. */
export async function eraseInCopies(
  server: ServerContext,
  id: Send['id'],
  command: CommandOf<'student.erase'>,
): Promise<readonly string[]> {
  const { copies } = server;
  if (copies === null || !command.copies) return [];
  const { clock } = await server.outside();
  const count = copies.listCopies().length;
  const left = await copies.rewriteCopies((copy, done) => {
    server.hub.tell({ event: 'progress', work: 'erase', share: done / count });
    return eraseInCopy(copy, { id, command }, clock.instant());
  });
  for (const { path, detail } of left) server.log(`Nothing was erased in ${path}: ${detail}.`);
  return left.map(
    ({ path, detail }) =>
      `This copy could not be read and still holds the student: ${path} (${detail}). Delete it by hand.`,
  );
}
