// The plans of a search that are kept side by side, so that two of them can be crossed.

import { copyInts, copyReals, newInts, newReals, real } from './memory.ts';
import { activityCount, lessonCount, reviewCount } from './model.ts';
import { drawIndex } from './random.ts';
import { firstDifference, isBetter, scoreSize } from './score.ts';
import { restorePlan } from './state.ts';
import { members } from './tuning.ts';
import { own, ownMinutes, ownReviewAt } from './walk.ts';

let minutes: i32 = 0;
let reviewAt: i32 = 0;
let scores: i32 = 0;

export function createPopulation(): void {
  minutes = newInts(members * activityCount * lessonCount);
  reviewAt = newInts(members * reviewCount);
  scores = newReals(members * scoreSize);
}

/** Minutes of a member, activity-major as in the state. */
export function minutesOf(n: i32): i32 {
  return minutes + ((n * activityCount * lessonCount) << 2);
}

function reviewsOf(n: i32): i32 {
  return reviewAt + ((n * reviewCount) << 2);
}

function scoreOf(n: i32): i32 {
  return scores + ((n * scoreSize) << 3);
}

/** Makes the best plan of the last walk the member n. */
export function keepMember(n: i32): void {
  copyInts(minutesOf(n), ownMinutes, activityCount * lessonCount);
  copyInts(reviewsOf(n), ownReviewAt, reviewCount);
  copyReals(scoreOf(n), own, scoreSize);
}

/** Makes the state the plan of the member n. */
export function restoreMember(n: i32): void {
  restorePlan(minutesOf(n), reviewsOf(n));
}

/** The better of two members drawn. */
export function drawMember(): i32 {
  const a = drawIndex(members);
  const b = drawIndex(members);
  return isBetter(scoreOf(b), scoreOf(a)) ? b : a;
}

/** A member other than n, the better of two as long as that is another. */
export function drawOther(n: i32): i32 {
  const other = drawMember();
  return other !== n ? other : (n + 1 + drawIndex(members - 1)) % members;
}

export function bestMember(): i32 {
  let best = 0;
  for (let n = 1; n < members; n++) if (isBetter(scoreOf(n), scoreOf(best))) best = n;
  return best;
}

/**
 * Takes the best plan of the last walk in for a member that is as good, or else for the worse of its parents if that is
 * no better: the members stay different from one another.
 */
export function admit(a: i32, b: i32): void {
  for (let n = 0; n < members; n++)
    if (firstDifference(own, scoreOf(n)) === 4) {
      keepMember(n);
      return;
    }
  const worse = isBetter(scoreOf(b), scoreOf(a)) ? a : b;
  if (!isBetter(scoreOf(worse), own)) keepMember(worse);
}

/** Whether at least half of the members leave as little undone as the best: no more is to be won there, it seems. */
export function isUndoneSettled(): bool {
  const least = real(scoreOf(bestMember()), 0);
  let count = 0;
  for (let n = 0; n < members; n++) if (real(scoreOf(n), 0) <= least + 1e-7) count++;
  return 2 * count >= members;
}
