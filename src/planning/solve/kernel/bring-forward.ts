// A revisit that comes late: work makes way for it in a lesson nearer to the day it is due.

import { int, setInt } from './memory.ts';
import { activityCount, lateWeight, lessonCount, reviewCount } from './model.ts';
import { draw, drawInteger } from './random.ts';
import { pick, pickFromPool, pool, setRuinLessons, setSoon } from './ruin.ts';
import { dueOf, latenessOf, reviewAt, standsIn } from './state.ts';
import { soonOthers, soonSpan } from './tuning.ts';

/** Picks work in that lesson, and some in the next ones; false when no revisit is late. */
export function pickLate(): bool {
  if (lateWeight === 0) return false;
  let sum: f64 = 0;
  let review = -1;
  for (let r = 0; r < reviewCount; r++) {
    const late = latenessOf(r);
    if (late <= 0) continue;
    sum += late;
    if (draw() * sum < late) review = r;
  }
  if (review < 0) return false;
  const due = dueOf(review);
  const last = min(int(reviewAt, review), lessonCount) - 1;
  const lesson = draw() < 0.5 ? due : drawInteger(due, last);
  const until = min(lessonCount - 1, lesson + drawInteger(0, soonSpan));
  setRuinLessons(lesson, until);
  setSoon(review, lesson);
  let size = 0;
  for (let i = 0; i < activityCount; i++) {
    if (standsIn(i, lesson, lesson)) {
      if (draw() < 0.62) pick(i);
    } else if (standsIn(i, lesson + 1, until)) setInt(pool, size++, i);
  }
  pickFromPool(size, drawInteger(0, soonOthers));
  return true;
}
