import { useSyncExternalStore } from 'react';
import type { OutboxStatus } from '../app/outbox.ts';
import { theOutbox } from '../app/the-outbox.ts';

/** The outbox of this window: `post(command)` returns at once; `state` and `pending` say where its writing is. */
export function useOutbox(): OutboxStatus & Pick<typeof theOutbox, 'post' | 'flush'> {
  const status = useSyncExternalStore(theOutbox.subscribe, theOutbox.status);
  return { ...status, post: theOutbox.post, flush: theOutbox.flush };
}
