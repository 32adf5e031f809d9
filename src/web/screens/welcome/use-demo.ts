// Has the server make the demo studio: how far it is comes over the live channel, and it can be stopped on the way.

import { useRef, useState } from 'react';
import { postJson } from '../../app/api.ts';
import { queryClient } from '../../app/query-client.ts';
import { showFault } from '../../app/send.ts';
import { dropToasts } from '../../app/toasts.ts';

export interface DemoMaking {
  /** How far it is, 0 to 1; null when none is being made. */
  readonly share: number | null;
  start(): Promise<void>;
  stop(): void;
}

/** `onDone` is called once the demo studio is there. */
export function useDemo(onDone: () => void): DemoMaking {
  const [share, setShare] = useState<number | null>(null);
  const abort = useRef<AbortController | null>(null);
  return {
    share,
    async start() {
      const controller = new AbortController();
      abort.current = controller;
      setShare(0);
      const live = new EventSource('/api/live');
      live.addEventListener('progress', (event: MessageEvent<string>) => {
        const told = readShare(event.data);
        if (told !== null) setShare(told);
      });
      const reply = await postJson<unknown>('/api/demo', {}, controller.signal);
      live.close();
      setShare(null);
      if (reply.ok) {
        dropToasts();
        onDone();
        await queryClient.invalidateQueries();
      } else if (!controller.signal.aborted) showFault(reply.error);
    },
    stop: () => abort.current?.abort(),
  };
}

function readShare(text: string): number | null {
  try {
    const told: unknown = JSON.parse(text);
    return typeof told === 'object' && told !== null && 'share' in told && typeof told.share === 'number'
      ? told.share
      : null;
  } catch {
    return null;
  }
}
