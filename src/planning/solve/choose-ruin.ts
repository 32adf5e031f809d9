// Chooses what to take out of the plan in one step: work that competes for the same lessons, so that putting it back
// can come out differently. After the ruin-and-recreate of G. Schrimpf et al., Journal of Computational Physics 159
// (2000) 139-171, and the strings of neighbours of J. Christiaens and G. Vanden Berghe, Transportation Science 54 (2020).

import { type Random, randomInteger } from '#core';
import { pickCrowdedOut } from './make-room.ts';
import type { Model } from './model.ts';
import { pick, type Ruin } from './ruin.ts';
import { never, type State } from './state.ts';
import { tuning } from './tuning.ts';

/** Fills `ruin` with activities to take out, at most about `most` placed ones and a few unfinished ones. */
export function chooseRuin(
  model: Model,
  state: State,
  random: Random,
  ruin: Ruin,
  most: number,
  level: number,
): void {
  ruin.isPicked.fill(0);
  ruin.pickedCount = 0;
  if (ruin.hasFirst) ruin.goesFirst.fill(0);
  ruin.hasFirst = false;
  if (level === 0 && random.next() < tuning.makeRoomShare && pickCrowdedOut(model, state, random, ruin)) {
    pickUnfinished(model, state, random, ruin, 1);
    return;
  }
  const draw = random.next();
  const byStrand = model.strandCount > 1 && random.next() < (tuning.strandShare[level] ?? 0);
  if (byStrand) pickStrands(model, state, random, ruin);
  else if (draw < tuning.neighboursShare)
    pickNeighbours(model, state, random, ruin, randomInteger(random, 0, model.lessonCount - 1), most);
  else if (draw < tuning.aroundUpTo) pickAround(model, state, random, ruin, most);
  else pickChain(model, state, random, ruin, most);
  pickUnfinished(
    model,
    state,
    random,
    ruin,
    level === 0 ? tuning.unfinishedAtU : randomInteger(random, 0, tuning.unfinishedLater),
  );
}

/** Activities that stand in a lesson or the few after it. */
function pickNeighbours(
  model: Model,
  state: State,
  random: Random,
  ruin: Ruin,
  lesson: number,
  most: number,
): void {
  const { lessonCount, activityCount } = model;
  const span = random.next() < 0.4 ? 1 : randomInteger(random, 2, 4);
  ruin.from = Math.max(0, lesson - (random.next() < 0.5 ? span - 1 : 0));
  ruin.until = Math.min(lessonCount - 1, ruin.from + span - 1);
  let size = 0;
  for (let i = 0; i < activityCount; i++) {
    if ((state.chunks[i] ?? 0) === 0) continue;
    const row = i * lessonCount;
    for (let l = ruin.from; l <= ruin.until; l++) {
      if ((state.minutes[row + l] ?? 0) === 0) continue;
      ruin.pool[size++] = i;
      break;
    }
  }
  const wanted = Math.min(size, randomInteger(random, 1, most));
  for (let k = 0; k < wanted; k++) {
    const at = randomInteger(random, k, size - 1);
    const i = ruin.pool[at] ?? 0;
    ruin.pool[at] = ruin.pool[k] ?? 0;
    pick(ruin, i);
  }
}

/** One activity, and some of what stands in a lesson that it could be in. */
function pickAround(model: Model, state: State, random: Random, ruin: Ruin, most: number): void {
  const i = randomInteger(random, 0, model.activityCount - 1);
  const from = model.first[i] ?? 0;
  const until = model.last[i] ?? 0;
  if (from > until) return;
  pickNeighbours(model, state, random, ruin, randomInteger(random, from, until), Math.max(1, most - 1));
  pick(ruin, i);
}

/** An activity with what it rests on and what rests on it. */
function pickChain(model: Model, state: State, random: Random, ruin: Ruin, most: number): void {
  const i = randomInteger(random, 0, model.activityCount - 1);
  pick(ruin, i);
  for (let k = 0; k < ruin.pickedCount && ruin.pickedCount < most; k++) {
    const here = ruin.picked[k] ?? 0;
    for (const j of model.succs[here] ?? [])
      if (ruin.pickedCount < most && random.next() < 0.7) pick(ruin, j);
    for (const j of model.preds[here] ?? [])
      if (ruin.pickedCount < most && random.next() < 0.5) pick(ruin, j);
  }
  const at = state.firstAt[i] ?? never;
  const from = model.first[i] ?? 0;
  const until = model.last[i] ?? 0;
  const lesson = at !== never ? at : from <= until ? randomInteger(random, from, until) : 0;
  ruin.from = lesson;
  ruin.until = model.lessonCount - 1;
  // what does not stand yet needs room made for it
  if (at === never || random.next() < 0.5)
    pickNeighbours(model, state, random, ruin, lesson, at === never ? most : 2);
  if (at === never) ruin.until = model.lessonCount - 1;
}

/** All work of one strand in a lesson, and of one in another lesson: two lessons can exchange what they are about. */
function pickStrands(model: Model, state: State, random: Random, ruin: Ruin): void {
  const last = model.lessonCount - 1;
  const a = randomInteger(random, 0, last);
  const b = Math.min(last, random.next() < 0.5 ? a + 1 : randomInteger(random, 0, last));
  pickStrand(model, state, random, ruin, a);
  if (b !== a) pickStrand(model, state, random, ruin, b);
  ruin.from = Math.min(a, b);
  ruin.until = Math.max(a, b);
}

function pickStrand(model: Model, state: State, random: Random, ruin: Ruin, lesson: number): void {
  const { activityCount, lessonCount } = model;
  let seen = 0;
  let strand = -1;
  for (let i = 0; i < activityCount; i++) {
    if ((state.minutes[i * lessonCount + lesson] ?? 0) === 0) continue;
    seen++;
    if (random.next() * seen < 1) strand = model.strand[i] ?? 0;
  }
  for (let i = 0; i < activityCount; i++)
    if (model.strand[i] === strand && (state.minutes[i * lessonCount + lesson] ?? 0) > 0) pick(ruin, i);
}

/** Up to three activities that are not finished and could stand in these lessons, with what they wait for. */
function pickUnfinished(model: Model, state: State, random: Random, ruin: Ruin, most: number): void {
  const { activityCount } = model;
  const start = randomInteger(random, 0, activityCount - 1);
  let wanted = most;
  for (let k = 0; k < activityCount && wanted > 0; k++) {
    const i = start + k < activityCount ? start + k : start + k - activityCount;
    if ((state.sum[i] ?? 0) >= (model.demand[i] ?? 0) || ruin.isPicked[i] === 1) continue;
    if ((model.last[i] ?? 0) < ruin.from || (model.first[i] ?? 0) > ruin.until) continue;
    if (waitsFor(model, state, ruin, i) && random.next() < 0.7) continue;
    pickWithUnfinished(model, state, ruin, i, 6);
    wanted--;
  }
}

/** Whether something it rests on is neither complete nor picked. */
function waitsFor(model: Model, state: State, ruin: Ruin, i: number): boolean {
  for (const p of model.preds[i] ?? [])
    if ((state.doneAt[p] ?? never) === never && ruin.isPicked[p] !== 1) return true;
  return false;
}

function pickWithUnfinished(model: Model, state: State, ruin: Ruin, i: number, depth: number): void {
  if (ruin.isPicked[i] === 1) return;
  pick(ruin, i);
  if (depth === 0) return;
  for (const p of model.preds[i] ?? [])
    if ((state.doneAt[p] ?? never) === never) pickWithUnfinished(model, state, ruin, p, depth - 1);
}
