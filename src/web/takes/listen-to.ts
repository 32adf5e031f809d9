// The page's side of listening: one worker for one take, ended when it has answered or is no longer wanted.

import type { HeardEvidence, ListenMessage, ListenProgress, ListenWish } from './listening-message.ts';

export interface ListeningInHand {
  /** What was heard; a sentence when it could not be listened to; null when it was cancelled. */
  readonly answer: Promise<HeardEvidence | string | null>;
  cancel(): void;
}

/** Starts to listen. `stopped` is said when the worker broke. */
export function listenTo(
  wish: ListenWish,
  onProgress: (progress: ListenProgress) => void,
  stopped: string,
): ListeningInHand {
  const worker = new Worker(new URL('./listen.worker.ts', import.meta.url), { type: 'module' });
  let cancel = () => {};
  const answer = new Promise<HeardEvidence | string | null>((done) => {
    const end = (told: HeardEvidence | string | null) => {
      worker.terminate();
      done(told);
    };
    cancel = () => end(null);
    worker.addEventListener('error', () => end(stopped));
    worker.addEventListener('message', ({ data }: MessageEvent<ListenMessage>) => {
      if ('progress' in data) onProgress(data.progress);
      else end('fault' in data ? data.fault : data.result);
    });
  });
  // The samples are copied: they are heard and kept afterwards.
  worker.postMessage(wish);
  return { answer, cancel: () => cancel() };
}
