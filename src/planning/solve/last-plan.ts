// The plan before this one: read by id, and put back as far as the problem of today still allows it.

import type { Plan, PlanningProblem } from '../problem/problem.ts';
import { reviewFits } from './insert-review.ts';
import type { Model } from './model.ts';
import type { LastPlan } from './score.ts';
import { dueOf, never, refreshActivity, type State, setMinutes, setReview, startStep } from './state.ts';

/** A plan as arrays; lessons, activities and revisits that the problem does not know are left out. */
export function readLastPlan(
  problem: PlanningProblem,
  reviewIds: readonly string[],
  plan: Pick<Plan, 'lessons'>,
): LastPlan {
  const T = problem.lessons.length;
  const indexById = new Map(problem.activities.map(({ id }, i) => [id, i]));
  const reviewById = new Map(reviewIds.map((id, r) => [id, r]));
  const minutes = new Int32Array(problem.activities.length * T);
  const reviewAt = new Int32Array(reviewIds.length).fill(never);
  for (const { lesson, chunks, reviews } of plan.lessons) {
    if (!(lesson >= 0 && lesson < T)) continue;
    for (const chunk of chunks) {
      const i = indexById.get(chunk.activity);
      if (i !== undefined) minutes[i * T + lesson] = chunk.minutes;
    }
    for (const id of reviews) {
      const r = reviewById.get(id);
      if (r !== undefined) reviewAt[r] = lesson;
    }
  }
  return { minutes, reviewAt };
}

/** Puts the last plan into an empty state, activity by activity, predecessors first: whole rows or nothing. */
export function loadLastPlan(model: Model, state: State, last: LastPlan): void {
  startStep(state);
  const waiting = new Set(Array.from({ length: model.activityCount }, (_, i) => i));
  while (waiting.size > 0)
    for (const i of waiting) {
      if ((model.preds[i] ?? []).some((p) => waiting.has(p))) continue;
      waiting.delete(i);
      if (!isRowAllowed(model, state, last, i)) continue;
      for (let l = 0; l < model.lessonCount; l++) {
        const m = last.minutes[i * model.lessonCount + l] ?? 0;
        if (m > 0) setMinutes(model, state, i, l, m);
      }
      refreshActivity(model, state, i);
    }
  for (let r = 0; r < model.reviewCount; r++) {
    const at = last.reviewAt[r] ?? never;
    if (
      at !== never &&
      at >= dueOf(model, state, r) &&
      reviewFits(model, state, at, model.reviewMinutes[r] ?? 0)
    )
      setReview(model, state, r, at);
  }
}

function isRowAllowed(model: Model, state: State, last: LastPlan, i: number): boolean {
  const { lessonCount, strandCount, maxRun, parkGap } = model;
  const demand = model.demand[i] ?? 0;
  let from = model.first[i] ?? 0;
  for (const p of model.preds[i] ?? []) from = Math.max(from, state.doneAt[p] ?? never);
  let sum = 0;
  let run = Math.max(0, model.runStart[i] ?? 0);
  let rest = 0;
  for (let l = 0; l < lessonCount; l++) {
    const m = last.minutes[i * lessonCount + l] ?? 0;
    if (m === 0) {
      run = 0;
      rest--;
      continue;
    }
    if (!Number.isInteger(m) || m < (model.minChunk[i] ?? 1) || m > (model.maxChunk[i] ?? 0)) return false;
    if (l < from || l > (model.last[i] ?? -1)) return false;
    if (rest > 0 && parkGap > 0) return false;
    run++;
    if (run === maxRun) {
      rest = parkGap;
      run = 0;
    }
    sum += m;
    const total = (state.total[l] ?? 0) + m;
    const squares = (state.squares[l] ?? 0) + m * m;
    if (total > (model.capacity[l] ?? 0) || squares > (model.squareLimit[l]?.[total] ?? -1)) return false;
    if ((state.blocks[l] ?? 0) >= (model.maxBlocks[l] ?? 0)) return false;
    const joins = (state.strandBlocks[l * strandCount + (model.strand[i] ?? 0)] ?? 0) > 0;
    if (!joins && (state.strandsIn[l] ?? 0) >= (model.maxStrands[l] ?? 0)) return false;
  }
  return sum === demand || sum <= (model.maxPartial[i] ?? 0);
}
