// The search itself runs in WebAssembly (`kernel/`, see docs/decisions): a problem goes in as two arrays, a plan comes out.

import { kernelCode } from './kernel-code.ts';
import type { PackedModel } from './pack-model.ts';

export interface KernelPlan {
  /** Minutes, activity-major: `minutes[activity * lessons + lesson]`. */
  readonly minutes: Int32Array;
  /** The lesson of each revisit, or `never`. */
  readonly reviewAt: Int32Array;
  /** Times that work was taken out and put back. */
  readonly rounds: number;
  /** U, P, E and what moved since the last plan, in the order in which they count. */
  readonly score: Float64Array;
}

/** A search: its budget in steps, each about a microsecond of work, where its chance starts, and the size of its plan. */
export interface SearchOrder {
  readonly steps: number;
  readonly seed: number;
  /** Activities × lessons. */
  readonly cells: number;
  readonly reviews: number;
}

/** Numbers in a score. */
export const scoreLength = 4;

/** What `kernel/index.ts` exports. */
interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  makeRoom(intCount: number, realCount: number): number;
  realsAddress(): number;
  solve(steps: number, seed: number): number;
  minutesAddress(): number;
  reviewsAddress(): number;
  scoreAddress(): number;
}

// both are there in Node and in browsers, but in no library of types without the one or the other
declare function atob(text: string): string;
declare const WebAssembly: {
  readonly Module: new (code: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
};

let kernel: Kernel | null = null;

/** Searches a problem; the same problem and order give the same plan on every machine. */
export function runKernel(
  { ints, reals }: PackedModel,
  { cells, reviews, steps, seed }: SearchOrder,
): KernelPlan {
  kernel ??= startKernel();
  const at = kernel.makeRoom(ints.length, reals.length);
  new Int32Array(kernel.memory.buffer, at, ints.length).set(ints);
  new Float64Array(kernel.memory.buffer, kernel.realsAddress(), reals.length).set(reals);
  const rounds = kernel.solve(steps, seed);
  // copies: the next problem is written over this one
  return {
    minutes: new Int32Array(kernel.memory.buffer, kernel.minutesAddress(), cells).slice(),
    reviewAt: new Int32Array(kernel.memory.buffer, kernel.reviewsAddress(), reviews).slice(),
    rounds,
    score: new Float64Array(kernel.memory.buffer, kernel.scoreAddress(), scoreLength).slice(),
  };
}

function startKernel(): Kernel {
  const code = Uint8Array.from(atob(kernelCode), (letter) => letter.charCodeAt(0));
  // the exports are those of kernel/index.ts: kernel-code.ts is made from it
  return new WebAssembly.Instance(new WebAssembly.Module(code)).exports as Kernel;
}
