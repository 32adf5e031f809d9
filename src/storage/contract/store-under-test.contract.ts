// The stores that the contract is asked of, each open for the length of one test.

import { onTestFinished } from 'vitest';
import type { Store } from '#studio';
import { putSample } from './sample-studio.contract.ts';

export interface StoreUnderTest {
  /** An empty store of its own for each call; closed by the suite. */
  open(): Promise<Store>;
  /** Whether readers and a writer are at work at the same time, or take turns. */
  readonly readsDuringChanges: boolean;
}

/** An empty store, closed when the test ends. */
export async function openEmpty(under: StoreUnderTest): Promise<Store> {
  const store = await under.open();
  onTestFinished(() => store.close());
  return store;
}

/** A store with the sample studio, closed when the test ends. */
export async function openSample(under: StoreUnderTest): Promise<Store> {
  const store = await openEmpty(under);
  await putSample(store);
  return store;
}
