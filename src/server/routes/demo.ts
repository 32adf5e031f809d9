// The demo studio: made aside in memory, so that one that is stopped half-way leaves nothing, then taken over whole.

import { setImmediate } from 'node:timers/promises';
import type { Handler } from 'hono';
import { createDemo } from '#demo';
import { createMemoryStore } from '#storage';
import { studioId } from '#studio';
import { refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';

export function postDemo(server: ServerContext): Handler {
  return async (c) => {
    const refusal = {
      kind: 'NotEmpty',
      message: 'There is a studio here already; the demo studio needs an empty one.',
    } as const;
    if ((await server.store.read((reader) => reader.get('studio', studioId))) !== null)
      return refuse(c, refusal);
    const outside = await server.outside();
    const scratch = await createMemoryStore(outside.clock);
    try {
      const made = await createDemo(scratch, outside, {
        today: outside.clock.today(),
        timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        async onProgress(share) {
          server.hub.tell({ event: 'progress', work: 'demo', share });
          await setImmediate(); // other requests, and the news just told, get their turn
          return !c.req.raw.signal.aborted;
        },
      });
      if (!made)
        return refuse(c, { kind: 'NotAllowedNow', message: 'Setting up the demo studio was stopped.' });
      const loaded = await server.store.load(await scratch.dump());
      if (!loaded.ok) return refuse(c, refusal);
    } finally {
      await scratch.close();
    }
    server.hub.tell({ event: 'change', change: '', courses: [] });
    return c.json({ loaded: true });
  };
}
