import type { Model } from './model.ts';
import { dueOf, never, type State } from './state.ts';

/** U, P, E, and what moved against the last plan, in the order in which they count. */
export type Score = Float64Array;

/** Writes the score of a state into `into`; `moves` may be left out of account with null. */
export function measureScore(model: Model, state: State, previous: LastPlan | null, into: Score): void {
  const { lessonCount, activityCount, reviewCount } = model;
  let undone = 0;
  let penalty = 0;
  let splits = 0;
  for (let i = 0; i < activityCount; i++) {
    const left = (model.demand[i] ?? 0) - (state.sum[i] ?? 0);
    const chunks = state.chunks[i] ?? 0;
    if (left > 0) {
      undone += (model.weight[i] ?? 0) * left;
      penalty += model.value[i] ?? 0;
    }
    if (chunks > 1) splits += chunks - 1;
  }
  let late = 0;
  if (model.lateWeight > 0)
    for (let r = 0; r < reviewCount; r++) {
      const due = dueOf(model, state, r);
      if (due >= lessonCount) continue;
      const at = state.reviewAt[r] ?? never;
      late += (model.reviewWeight[r] ?? 0) * ((at === never ? lessonCount : at) - due);
    }
  let solo = 0;
  let early = 0;
  for (let l = 0; l < lessonCount; l++) {
    if (state.strandsIn[l] === 1) solo++;
    early += l * ((state.total[l] ?? 0) - (state.opening[l] ?? 0));
  }
  into[0] = undone;
  into[1] = penalty + model.lateWeight * late + model.soloWeight * solo + model.splitWeight * splits;
  into[2] = early;
  into[3] = previous === null ? 0 : movesSince(state, previous);
}

/** The plan before this one: minutes by cell and lesson by revisit. */
export interface LastPlan {
  readonly minutes: Int32Array;
  readonly reviewAt: Int32Array;
}

function movesSince(state: State, previous: LastPlan): number {
  let moves = 0;
  for (let cell = 0; cell < state.minutes.length; cell++)
    moves += Math.abs((state.minutes[cell] ?? 0) - (previous.minutes[cell] ?? 0));
  for (let r = 0; r < state.reviewAt.length; r++) if (state.reviewAt[r] !== previous.reviewAt[r]) moves++;
  return moves;
}

/** The first place in which two scores differ by more than rounding; 4 when they are equal. */
export function firstDifference(a: Score, b: Score): number {
  for (let k = 0; k < 4; k++) if (Math.abs((a[k] ?? 0) - (b[k] ?? 0)) > 1e-7) return k;
  return 4;
}
