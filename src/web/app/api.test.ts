import { afterEach, expect, test, vi } from 'vitest';
import type { Command } from '#contract';
import type { Id } from '#core';
import { getView, sendCommand } from './api.ts';
import { heedTold } from './readings.ts';

afterEach(() => void vi.unstubAllGlobals());

const id = 'change:a' as Id<'change'>;
const undo: Command = { type: 'undo', change: 'change:b' as Id<'change'> };
const answer = (body: BodyInit, status = 200) =>
  vi.stubGlobal('fetch', async () => new Response(body, { status }));

/** Answers never, and gives up when it is told to, as a browser does. */
const neverAnswer = () =>
  vi.stubGlobal('fetch', (_: string, { signal }: RequestInit) => {
    return new Promise((_done, failed) => {
      signal?.addEventListener('abort', () => failed(signal.reason));
    });
  });

test('what is not answered in time was not reached, and is worth another try', async () => {
  neverAnswer();
  expect(await sendCommand(id, undo, 5)).toMatchObject({ ok: false, error: { offline: true } });
});

test('a view is not waited for without an end', async () => {
  const asked = vi.spyOn(AbortSignal, 'timeout').mockImplementation(() => AbortSignal.abort());
  vi.stubGlobal('fetch', async (_: string, { signal }: RequestInit = {}) => {
    signal?.throwIfAborted();
    return new Response('{}');
  });
  await expect(getView('/api/studio')).rejects.toMatchObject({ offline: true });
  asked.mockRestore();
});

test('an answer that breaks off in the middle was not had; one that is not ours is a fault', async () => {
  answer(
    new ReadableStream({
      start(stream) {
        stream.enqueue(new TextEncoder().encode('{"change":'));
        stream.error(new TypeError('network error'));
      },
    }),
  );
  expect(await sendCommand(id, undo)).toMatchObject({ ok: false, error: { offline: true } });
  answer('<html>');
  expect(await sendCommand(id, undo)).toMatchObject({ ok: false, error: { kind: 'Broken' } });
  expect(await sendCommand(id, undo)).not.toHaveProperty('error.offline');
  answer('<html>', 502);
  expect(await sendCommand(id, undo)).toMatchObject({ ok: false, error: { offline: true } });
});

test('a view that is older than a change the line has told of meanwhile is asked for again, once', async () => {
  const counts = ['4', '4', '6'];
  let asked = 0;
  vi.stubGlobal('fetch', async () => {
    const headers = { 'levare-told': counts[asked++] ?? '' };
    return new Response(JSON.stringify(asked), { headers });
  });
  expect(await getView('/api/studio')).toBe(1);
  heedTold(5);
  expect(await getView('/api/studio')).toBe(3);
  expect(asked).toBe(3);
});
