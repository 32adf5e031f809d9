// Gives the planner a second thread, so that in the time of one search it makes two.

import { Worker } from 'node:worker_threads';
import { type SearchPartner, searchWith } from '#planning';
import { createSharedSearch, readPlan, type SharedSearch, state, writeOrder } from './shared-search.ts';

/** A search takes a third of a second at most; after so many milliseconds the thread is taken to be gone. */
const longestWait = 5000;

/** Starts the thread and has the planner use it. It ends with the process and does not keep it going. */
export function startSearchThread(): void {
  const shared = createSharedSearch();
  const thread = new Worker(new URL('./search-thread.js', import.meta.url), { workerData: shared });
  // what a thread that broke does not take is searched here: the same plans, in twice the time
  thread.on('error', () => undefined);
  thread.unref();
  searchWith(createPartner(shared));
}

/** The planner's end of what is shared. A search that the thread has not taken when it is wanted is taken back. */
export function createPartner(shared: SharedSearch): SearchPartner {
  const { control } = shared;
  return {
    begin(model, order) {
      // a search that came back too late is let go
      Atomics.compareExchange(control, 0, state.done, state.idle);
      if (Atomics.load(control, 0) !== state.idle || !writeOrder(shared, model, order)) return false;
      Atomics.store(control, 0, state.asked);
      Atomics.notify(control, 0);
      return true;
    },
    finish(order) {
      if (Atomics.compareExchange(control, 0, state.asked, state.idle) === state.asked) return null;
      Atomics.wait(control, 0, state.taken, longestWait);
      if (Atomics.load(control, 0) !== state.done) return null;
      const plan = readPlan(shared, order);
      Atomics.store(control, 0, state.idle);
      return plan;
    },
  };
}
