// Work that other work has crowded out of its lessons: it goes back in first, with all it waits for.

import { type Random, randomInteger } from '#core';
import type { Model } from './model.ts';
import { pick, type Ruin } from './ruin.ts';
import { never, type State } from './state.ts';
import { tuning } from './tuning.ts';

/**
 * Picks an unfinished activity, the dearer its rest the likelier; what it rests on that is not complete in time for it;
 * and what stands in a few lessons where it could be. False when nothing that counts is unfinished.
 */
export function pickCrowdedOut(model: Model, state: State, random: Random, ruin: Ruin): boolean {
  const { activityCount, lessonCount } = model;
  const i = chooseUnfinished(model, state, random);
  if (i < 0) return false;
  const latest = latestFor(model, state, i);
  if (latest < 0) return false;
  ruin.until = randomInteger(random, Math.min(latest, model.first[i] ?? 0), latest);
  ruin.from = Math.max(0, ruin.until + 1 - randomInteger(random, 1, tuning.roomLessons));
  ruin.hasFirst = true;
  pickWithWay(model, state, ruin, i);
  for (const j of model.succs[i] ?? []) if ((state.sum[j] ?? 0) < (model.demand[j] ?? 0)) pick(ruin, j);
  const share = random.next() < tuning.wholeRoomShare ? 1 : 0.6;
  for (let j = 0; j < activityCount; j++) {
    if ((state.chunks[j] ?? 0) === 0 || ruin.isPicked[j] === 1) continue;
    for (let l = ruin.from; l <= ruin.until; l++) {
      if ((state.minutes[j * lessonCount + l] ?? 0) === 0) continue;
      if (random.next() < share) pick(ruin, j);
      break;
    }
  }
  return true;
}

function chooseUnfinished(model: Model, state: State, random: Random): number {
  let sum = 0;
  let chosen = -1;
  for (let i = 0; i < model.activityCount; i++) {
    const loss = (model.weight[i] ?? 0) * ((model.demand[i] ?? 0) - (state.sum[i] ?? 0));
    if (loss <= 0) continue;
    sum += loss;
    if (random.next() * sum < loss) chosen = i;
  }
  return chosen;
}

/** The last lesson in which there must be room: its own, or that of something unfinished it rests on. */
function latestFor(model: Model, state: State, i: number): number {
  let latest = model.last[i] ?? 0;
  for (const p of model.preds[i] ?? [])
    if ((state.doneAt[p] ?? never) === never) latest = Math.min(latest, latestFor(model, state, p));
  return latest;
}

function pickWithWay(model: Model, state: State, ruin: Ruin, i: number): void {
  if (ruin.goesFirst[i] === 1) return;
  ruin.goesFirst[i] = 1;
  pick(ruin, i);
  for (const p of model.preds[i] ?? [])
    if ((state.doneAt[p] ?? never) >= ruin.from) pickWithWay(model, state, ruin, p);
}
