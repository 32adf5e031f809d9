import { expect, test } from 'vitest';
import { runKernel } from '#planning';
import { generateProblem } from '../../../bench/planner/generate.ts';
import { startSourceThread } from '../../../bench/planner/start-source-thread.ts';
import { createModel } from '../../planning/solve/model.ts';
import { packModel } from '../../planning/solve/pack-model.ts';
import { createSharedSearch, readOrder, state, writePlan } from './shared-search.ts';
import { createPartner } from './start-search-thread.ts';

const searches = [7001, 7002, 7003].map((number) => {
  const problem = generateProblem('medium', number);
  const model = createModel(problem);
  const order = {
    cells: model.activityCount * model.lessonCount,
    reviews: model.reviewCount,
    steps: 500,
    seed: number,
  };
  return { packed: packModel(model, null, 0), order };
});
const [search] = searches;
if (search === undefined) throw new Error('no problems');
const { packed, order } = search;

test('the thread brings back the plan that is found here, search after search', async () => {
  const { partner, hasTaken, end } = startSourceThread();
  try {
    for (const { packed, order } of searches) {
      expect(partner.begin(packed, order)).toBe(true);
      await hasTaken();
      expect(partner.finish(order)).toEqual(runKernel(packed, order));
    }
  } finally {
    await end();
  }
});

test('a search that was not taken in time is taken back', () => {
  const partner = createPartner(createSharedSearch());
  expect(partner.begin(packed, order)).toBe(true);
  expect(partner.finish(order)).toBeNull();
  expect(partner.begin(packed, order)).toBe(true);
});

test('a search that comes back late is let go, and none is begun until then', () => {
  const shared = createSharedSearch();
  const partner = createPartner(shared);
  partner.begin(packed, order);
  Atomics.store(shared.control, 0, state.taken);
  expect(partner.begin(packed, order)).toBe(false);
  writePlan(shared, runKernel(...readOrder(shared)));
  Atomics.store(shared.control, 0, state.done);
  expect(partner.begin(packed, order)).toBe(true);
});

test('a problem too large for the room is searched by one thread', () => {
  const ints = new Int32Array(2 << 20);
  expect(createPartner(createSharedSearch()).begin({ ints, reals: packed.reals }, order)).toBe(false);
});
