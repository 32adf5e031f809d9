// A revisit that comes late: work makes way for it in a lesson nearer to the day it is due.

import { int, real, setInt } from './memory.ts';
import { activityCount, lateWeight, lessonCount, reviewCount, reviewWeight } from './model.ts';
import { draw, drawInteger } from './random.ts';
import { pick, pool, setRuinLessons, setSoon } from './ruin.ts';
import { chunks, dueOf, minutes, reviewAt } from './state.ts';
import { soonOthers, soonSpan } from './tuning.ts';

/** Picks work in that lesson, and some in the next ones; false when no revisit is late. */
export function pickLate(): bool {
  if (lateWeight === 0) return false;
  let sum: f64 = 0;
  let review = -1;
  for (let r = 0; r < reviewCount; r++) {
    const due = dueOf(r);
    if (due >= lessonCount) continue;
    const late = real(reviewWeight, r) * f64(min(int(reviewAt, r), lessonCount) - due);
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
    if (int(chunks, i) === 0) continue;
    if (int(minutes, i * lessonCount + lesson) > 0) {
      if (draw() < 0.8) pick(i);
      continue;
    }
    for (let l = lesson + 1; l <= until; l++) {
      if (int(minutes, i * lessonCount + l) === 0) continue;
      setInt(pool, size++, i);
      break;
    }
  }
  const wanted = min(size, drawInteger(0, soonOthers));
  for (let k = 0; k < wanted; k++) {
    const at = drawInteger(k, size - 1);
    const i = int(pool, at);
    setInt(pool, at, int(pool, k));
    pick(i);
  }
  return true;
}
