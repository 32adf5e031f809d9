// What the recording screen and the listening worker say to each other.

import type { HeardTake, WrittenContext } from '#contract';
import type { Evidence } from '#listening';

export interface ListenWish {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly context: WrittenContext;
}

/** Where the listening is; `share` of the work that is done, 0 to 1. */
export interface ListenProgress {
  readonly stage: 'notes' | 'beat' | 'evidence';
  readonly share: number;
}

export interface HeardEvidence {
  readonly heard: HeardTake;
  readonly evidence: Evidence;
  /** The context it was measured by: without the click's place where the playing did not lie on it. */
  readonly context: WrittenContext;
}

export type ListenMessage =
  | { readonly progress: ListenProgress }
  | { readonly result: HeardEvidence }
  | { readonly fault: string };
