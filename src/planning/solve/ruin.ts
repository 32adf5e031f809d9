// What one step takes out of the plan: the picked activities, and the lessons it is about.

import type { Model } from './model.ts';

export interface Ruin {
  readonly picked: Int32Array;
  pickedCount: number;
  readonly isPicked: Uint8Array;
  /** Put back under a lowered roof this time. */
  readonly isHindered: Uint8Array;
  /** First and last lesson the ruin is about. */
  from: number;
  until: number;
  readonly pool: Int32Array;
  /** 1 for what goes back in before everything else. */
  readonly goesFirst: Uint8Array;
  hasFirst: boolean;
}

export function createRuin(model: Model): Ruin {
  return {
    picked: new Int32Array(4 * model.activityCount),
    pickedCount: 0,
    isPicked: new Uint8Array(model.activityCount),
    isHindered: new Uint8Array(model.activityCount),
    from: 0,
    until: 0,
    pool: new Int32Array(model.activityCount),
    goesFirst: new Uint8Array(model.activityCount),
    hasFirst: false,
  };
}

export function pick(ruin: Ruin, i: number): void {
  if (ruin.isPicked[i] === 1) return;
  ruin.isPicked[i] = 1;
  ruin.picked[ruin.pickedCount++] = i;
}
