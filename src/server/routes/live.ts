// A quiet line to every open window: one event after each change, with how many were told so far.

import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { Hub, LiveNews } from '../live/hub.ts';

const heartbeatMs = 25_000;

export const streamLive = (hub: Hub) => (c: Context) => {
  // Whoever asks for the head alone hears nothing, and would never hang up.
  if (c.req.method === 'HEAD') return c.body(null, 200, { 'content-type': 'text/event-stream' });
  return streamSSE(c, async (stream) => {
    const waiting: (LiveNews & { readonly told: number })[] = [];
    let wake: () => void = () => {};
    const stop = hub.listen((news) => {
      waiting.push({ ...news, told: hub.told() });
      wake();
    });
    stream.onAbort(() => {
      stop();
      wake();
    });
    // What was told before is not told again: whoever read something earlier hears by this number that it may be old.
    await stream.writeSSE({ event: 'hello', data: JSON.stringify({ told: hub.told() }) });
    while (!stream.aborted) {
      for (const { event, ...news } of waiting.splice(0))
        await stream.writeSSE({ event, data: JSON.stringify(news) });
      const timer = await new Promise<'news' | 'quiet'>((done) => {
        const quiet = setTimeout(() => done('quiet'), heartbeatMs);
        wake = () => {
          clearTimeout(quiet);
          done('news');
        };
        if (waiting.length > 0 || stream.aborted) wake();
      });
      if (timer === 'quiet') await stream.writeSSE({ event: 'quiet', data: '{}' });
    }
  });
};
