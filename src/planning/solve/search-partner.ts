// A second search from another start of chance, beside the first where there is a second thread to run it.

import type { PackedModel } from './pack-model.ts';
import { type KernelPlan, runKernel, type SearchOrder, scoreLength } from './run-kernel.ts';

/** Runs one search at a time somewhere else. */
export interface SearchPartner {
  /** Begins a search; false when it cannot take one now. */
  begin(model: PackedModel, order: SearchOrder): boolean;
  /** Waits for the search begun; null when it does not come back, which leaves it to be run here. */
  finish(order: SearchOrder): KernelPlan | null;
}

/** Takes no search: the second follows the first in the same thread, for a single plan. */
export const noPartner: SearchPartner = { begin: () => false, finish: () => null };

let partner: SearchPartner | null = null;

/**
 * From now on plans with the whole budget are searched for twice, once by the partner, and the better one is taken: the
 * first when they are equal. The plan does not depend on whether the partner was there in time. `null`: once, as without.
 */
export function searchWith(other: SearchPartner | null): void {
  partner = other;
}

/** Searches once, or twice with a partner. */
export function searchPlan(model: PackedModel, order: SearchOrder): KernelPlan {
  if (partner === null) return runKernel(model, order);
  const other = { ...order, seed: order.seed + 1 };
  const isBegun = partner.begin(model, other);
  const first = runKernel(model, order);
  const second = (isBegun ? partner.finish(other) : null) ?? runKernel(model, other);
  return betterOf(first, second);
}

/** The better of two plans, the first when they are equal. */
export function betterOf(first: KernelPlan, second: KernelPlan): KernelPlan {
  return isBetter(second, first) ? second : first;
}

/** Whether a plan is better in the first number in which two scores differ by more than rounding. */
function isBetter(a: KernelPlan, b: KernelPlan): boolean {
  for (let k = 0; k < scoreLength; k++) {
    const difference = (a.score[k] ?? 0) - (b.score[k] ?? 0);
    if (Math.abs(difference) > 1e-7) return difference < 0;
  }
  return false;
}
