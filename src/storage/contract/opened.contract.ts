// A store for the length of one test.

import { onTestFinished } from 'vitest';
import type { Store } from '#studio';
import type { StoreUnderTest } from '../store.contract.ts';
import { putSample } from './sample-studio.contract.ts';

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
