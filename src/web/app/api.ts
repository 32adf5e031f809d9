// The one way to the server: GET answers a view, POST takes JSON. What goes wrong comes back as an ApiFault.

import {
  type Command,
  type CommandReply,
  type Fault,
  type FaultReply,
  type Send,
  toldHeader,
} from '#contract';
import { err, type Id, ok, type Result } from '#core';
import { words } from '../words/index.ts';
import { markOwnChange } from './own-changes.ts';
import { noteReading } from './readings.ts';

/** Why a request did not succeed. `offline` when the server was not reached at all: worth trying again. */
export type ApiFault = Fault & { readonly offline?: true };

const offlineFault = (): ApiFault => ({ kind: 'Broken', message: words.frame.offline, offline: true });

/** As long as a view may take. A network that went away says nothing: without an end a request waits for minutes. */
const viewMilliseconds = 45_000;

function isFaultReply(value: unknown): value is FaultReply {
  if (typeof value !== 'object' || value === null || !('fault' in value)) return false;
  const { fault } = value;
  return typeof fault === 'object' && fault !== null && 'kind' in fault && 'message' in fault;
}

/** `hear` gets the headers of whatever is answered. */
async function request<T>(
  path: string,
  init: RequestInit,
  hear: (headers: Headers) => void = () => {},
): Promise<Result<T, ApiFault>> {
  let response: Response;
  try {
    response = await fetch(path, { credentials: 'same-origin', ...init });
    hear(response.headers);
  } catch {
    return err(offlineFault());
  }
  let body: unknown;
  try {
    body = await response.json();
  } catch (error) {
    // A proxy or a server on its way down answers something that is not ours; or the answer broke off in the middle.
    const isWhole = error instanceof SyntaxError;
    return err(response.ok && isWhole ? { kind: 'Broken', message: words.frame.broken } : offlineFault());
  }
  if (response.ok) return ok(body as T);
  return err(isFaultReply(body) ? body.fault : { kind: 'Broken', message: words.frame.broken });
}

/** Asks for a view; throws an ApiFault, as TanStack Query wants it. */
export async function getView<T>(path: string): Promise<T> {
  let isCurrent = true;
  const ask = () =>
    request<T>(path, { signal: AbortSignal.timeout(viewMilliseconds) }, (headers) => {
      isCurrent = noteReading(headers.get(toldHeader));
    });
  let reply = await ask();
  // The change that the line told of while this was on its way is not told again.
  if (!isCurrent) reply = await ask();
  if (!reply.ok) throw reply.error;
  return reply.value;
}

/** Sends JSON and returns the reply or the fault; `signal` gives the request up. */
export function postJson<T>(
  path: string,
  body: unknown,
  signal: AbortSignal | null = null,
): Promise<Result<T, ApiFault>> {
  return postText<T>(path, JSON.stringify(body), signal);
}

/** Sends a text as it is: JSON, or something of which the server says why it is none. */
export function postText<T>(
  path: string,
  body: string,
  signal: AbortSignal | null = null,
): Promise<Result<T, ApiFault>> {
  return request<T>(path, {
    method: 'POST',
    signal,
    headers: { 'content-type': 'application/json' },
    body,
  });
}

/** Sends JSON and returns the file that is made of it, or the fault. */
export async function postForFile(path: string, body: unknown): Promise<Result<Blob, ApiFault>> {
  let response: Response;
  try {
    response = await fetch(path, {
      method: 'POST',
      credentials: 'same-origin',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (response.ok) return ok(await response.blob());
  } catch {
    return err(offlineFault());
  }
  const refused: unknown = await response.json().catch(() => null);
  return err(isFaultReply(refused) ? refused.fault : { kind: 'Broken', message: words.frame.broken });
}

/**
 * Sends one command. The same `id` sent again counts once, so who does that may give it up after `milliseconds`: what was
 * not answered by then is as what was not reached.
 */
export function sendCommand(
  id: Id<'change'>,
  command: Command,
  milliseconds: number | null = null,
): Promise<Result<CommandReply, ApiFault>> {
  markOwnChange(id);
  const send: Send = { id, command };
  const signal = milliseconds === null ? null : AbortSignal.timeout(milliseconds);
  return postJson<CommandReply>('/api/commands', send, signal);
}

/** Whether something thrown is an ApiFault. */
export function isApiFault(value: unknown): value is ApiFault {
  return typeof value === 'object' && value !== null && 'kind' in value && 'message' in value;
}
