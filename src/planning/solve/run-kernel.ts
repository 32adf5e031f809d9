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
}

/** What `kernel/index.ts` exports. */
interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  makeRoom(intCount: number, realCount: number): number;
  realsAddress(): number;
  solve(steps: number, seed: number): number;
  minutesAddress(): number;
  reviewsAddress(): number;
}

// both are there in Node and in browsers, but in no library of types without the one or the other
declare function atob(text: string): string;
declare const WebAssembly: {
  readonly Module: new (code: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
};

let kernel: Kernel | null = null;

/** Searches with a budget of `steps`, each about a microsecond of work; `cells` is activities × lessons. */
export function runKernel(
  { ints, reals }: PackedModel,
  { cells, reviews, steps, seed }: Readonly<Record<'cells' | 'reviews' | 'steps' | 'seed', number>>,
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
  };
}

function startKernel(): Kernel {
  const code = Uint8Array.from(atob(kernelCode), (letter) => letter.charCodeAt(0));
  // the exports are those of kernel/index.ts: kernel-code.ts is made from it
  return new WebAssembly.Instance(new WebAssembly.Module(code)).exports as Kernel;
}
