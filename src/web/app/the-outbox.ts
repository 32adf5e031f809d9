// The one outbox of this window, over this browser's store.

import { newId } from '../new-id.ts';
import { sendCommand } from './api.ts';
import { createOutbox, type Outbox } from './outbox.ts';
import { createBrowserStore } from './outbox-store.ts';

/** Calls back after some milliseconds; returns how to call it off. */
export function afterMilliseconds(milliseconds: number, callback: () => void): () => void {
  const timer = window.setTimeout(callback, milliseconds);
  return () => window.clearTimeout(timer);
}

export const theOutbox: Outbox = createOutbox({
  store: createBrowserStore(),
  send: sendCommand,
  newChangeId: () => newId('change'),
  after: afterMilliseconds,
  restMilliseconds: 700,
  longestMilliseconds: 4000,
});

/** Starts sending what an earlier page left, and tries again at once when the network or the window comes back. */
export function startOutbox(): void {
  void theOutbox.start();
  window.addEventListener('online', () => void theOutbox.flush());
  window.addEventListener('pagehide', () => void theOutbox.flush());
  document.addEventListener('visibilitychange', () => {
    if (theOutbox.status().pending > 0) void theOutbox.flush();
  });
}
