// What one step takes out of the plan: the picked activities, and the lessons it is about.

import { int, newInts, setInt } from './memory.ts';
import { activityCount } from './model.ts';
import { drawInteger } from './random.ts';

export let picked: i32 = 0;
export let pickedCount: i32 = 0;
export let isPicked: i32 = 0;
/** Put back under a lowered roof this time. */
export let isHindered: i32 = 0;
/** 1 for what goes back in before everything else. */
export let goesFirst: i32 = 0;
/** Activities that one step chooses among. */
export let pool: i32 = 0;
/** First and last lesson the ruin is about. */
export let ruinFrom: i32 = 0;
export let ruinUntil: i32 = 0;
/** A lesson that is filled anew with even chunks, of at most so many minutes; −1: none. */
export let evenLesson: i32 = -1;
export let evenRoof: i32 = 0;
/** A revisit that goes before the work, into this lesson if it fits; −1: none. */
export let soonReview: i32 = -1;
export let soonLesson: i32 = 0;
/** Most that can be picked in one step, with what makes way on the way. */
export let mostPicked: i32 = 0;

export function createRuin(): void {
  pickedCount = 0;
  mostPicked = 4 * activityCount;
  picked = newInts(mostPicked);
  isPicked = newInts(activityCount);
  isHindered = newInts(activityCount);
  goesFirst = newInts(activityCount);
  pool = newInts(activityCount);
}

export function clearRuin(): void {
  for (let k = 0; k < pickedCount; k++) {
    setInt(isPicked, int(picked, k), 0);
    setInt(goesFirst, int(picked, k), 0);
  }
  pickedCount = 0;
  evenLesson = -1;
  soonReview = -1;
}

export function setRuinLessons(from: i32, until: i32): void {
  ruinFrom = from;
  ruinUntil = until;
}

export function pick(i: i32): void {
  if (int(isPicked, i) === 1) return;
  setInt(isPicked, i, 1);
  setInt(picked, pickedCount++, i);
}

/** Picks so many of the first `size` in the pool, at random. */
export function pickFromPool(size: i32, wanted: i32): void {
  for (let k = 0; k < min(size, wanted); k++) {
    const at = drawInteger(k, size - 1);
    const i = int(pool, at);
    setInt(pool, at, int(pool, k));
    pick(i);
  }
}

/** Picks once more what has been put back already: it makes way. */
export function pickAgain(i: i32, queue: i32, current: i32): void {
  setInt(isPicked, i, 1);
  setInt(picked, pickedCount++, int(picked, queue));
  setInt(picked, queue, current);
  setInt(picked, queue - 1, i);
}

export function setEven(lesson: i32, most: i32): void {
  evenLesson = lesson;
  evenRoof = most;
}

export function setSoon(review: i32, lesson: i32): void {
  soonReview = review;
  soonLesson = lesson;
}
