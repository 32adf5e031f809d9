// The sound of a take, for hearing it again. Never a page of its own: whatever its bytes, nothing in them is run.

import type { Context } from 'hono';
import { loadSound } from '#studio';
import { refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';
import { readId } from './read-id.ts';

export const getSound = (server: ServerContext) => async (c: Context) => {
  const id = readId(c, 'take');
  if (!id.ok) return refuse(c, id.error);
  const sound = await server.store.read((reader) => loadSound(reader, id.value));
  if (sound === null)
    return refuse(c, { kind: 'NotFound', message: 'No sound is kept with this take; its figures are.' });
  c.header('content-type', sound.type);
  c.header('content-disposition', 'attachment; filename="take"');
  c.header('x-content-type-options', 'nosniff');
  return c.body(Buffer.from(sound.data, 'base64'));
};
