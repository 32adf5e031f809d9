// The one door for changes: a command in, what was done out, and every open window told.

import type { Context } from 'hono';
import { sendSchema, whatIfSchema } from '#contract';
import { carryOut, whatIf } from '#studio';
import { refuse } from '../answer.ts';
import { readBody } from '../body.ts';
import type { ServerContext } from '../context.ts';
import { eraseInCopies } from './erasing.ts';
import { readId } from './read-id.ts';

export const postCommand = (server: ServerContext) => async (c: Context) => {
  const send = await readBody(c, sendSchema);
  if (!send.ok) return refuse(c, send.error);
  const reply = await carryOut(server.store, send.value, await server.outside());
  if (!reply.ok) return refuse(c, reply.error);
  const { command } = send.value;
  const notices = command.type === 'student.erase' ? await eraseInCopies(server, send.value.id, command) : [];
  server.hub.tell({
    event: 'change',
    change: reply.value.change,
    courses: reply.value.courses.map((r) => r.course),
    ...(command.type === 'student.erase' ? { erased: true } : {}),
  });
  return c.json({ ...reply.value, notices: [...reply.value.notices, ...notices] });
};

export const postWhatIf = (server: ServerContext) => async (c: Context) => {
  const course = readId(c, 'course');
  if (!course.ok) return refuse(c, course.error);
  const body = await readBody(c, whatIfSchema);
  if (!body.ok) return refuse(c, body.error);
  const view = await whatIf(server.store, course.value, body.value.commands, await server.outside());
  return view.ok ? c.json(view.value) : refuse(c, view.error);
};
