// The planner's second thread: it sleeps until a search is asked for.

import { workerData } from 'node:worker_threads';
import { runKernel } from '#planning';
import { readOrder, type SharedSearch, state, writePlan } from './shared-search.ts';

// start-search-thread.ts hands over nothing else
const shared = workerData as SharedSearch;
const { control } = shared;
for (;;) {
  if (Atomics.compareExchange(control, 0, state.asked, state.taken) === state.asked) {
    writePlan(shared, runKernel(...readOrder(shared)));
    Atomics.store(control, 0, state.done);
    Atomics.notify(control, 0);
  }
  Atomics.wait(control, 0, Atomics.load(control, 0));
}
