// The planner's second thread from the sources, where there is no build.

import { Worker } from 'node:worker_threads';
import type { SearchPartner } from '#planning';
import { createSharedSearch, state } from '../../src/server/search-thread/shared-search.ts';
import { createPartner } from '../../src/server/search-thread/start-search-thread.ts';

const file = new URL('../../src/server/search-thread/search-thread.ts', import.meta.url);

export interface SourceThread {
  readonly partner: SearchPartner;
  /** Resolves when the thread has taken the search that was begun. */
  readonly hasTaken: () => Promise<void>;
  readonly end: () => Promise<unknown>;
}

export function startSourceThread(): SourceThread {
  const shared = createSharedSearch();
  // a thread does not get the loader of TypeScript from its parent
  const code = `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(file.href)}); })`;
  const thread = new Worker(code, {
    eval: true,
    workerData: shared,
    execArgv: ['--conditions=levare-source'],
  });
  return {
    partner: createPartner(shared),
    async hasTaken() {
      while (Atomics.load(shared.control, 0) === state.asked)
        await new Promise((done) => setTimeout(done, 10));
    },
    end: () => thread.terminate(),
  };
}
