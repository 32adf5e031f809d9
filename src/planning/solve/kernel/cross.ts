// Crosses two plans: a new one that is like the first in one part and like the second in the other. What cannot stand
// between the two goes back in as after a ruin.

import { int } from './memory.ts';
import { activityCount, demandOf, lessonCount, maxPartialOf, reviewCount } from './model.ts';
import { earliestOf } from './moving.ts';
import { minutesOf, restoreMember } from './population.ts';
import { around, draw, drawIndex, drawInteger } from './random.ts';
import { recreate } from './recreate.ts';
import { clearRuin, pick, setRuinLessons } from './ruin.ts';
import { keepsRunLimit } from './run-programme.ts';
import {
  chunks,
  firstAt,
  lessonFits,
  minutes,
  never,
  refreshActivity,
  removeActivity,
  setMinutes,
  setReview,
  startStep,
  sum,
  undoStep,
} from './state.ts';
import { activitiesShare } from './tuning.ts';

/** Makes the state a cross of the members a and b, without revisits; now and then it stays a. */
export function cross(a: i32, b: i32): void {
  restoreMember(a);
  startStep();
  clearRuin();
  for (let r = 0; r < reviewCount; r++) setReview(r, never);
  if (draw() < activitiesShare) takeActivities(minutesOf(b));
  else takeLessons(minutesOf(b));
  removeEarly();
  for (let i = 0; i < activityCount; i++) if (int(sum, i) < int(demandOf, i)) pick(i);
  setRuinLessons(0, -1);
  if (!recreate(1, Infinity, false)) undoStep();
}

/** Some activities stand as in the other plan; lessons that are too full then lose others, whole. */
function takeActivities(other: i32): void {
  const share = 0.2 + 0.6 * draw();
  for (let i = 0; i < activityCount; i++) {
    if (!differs(i, other) || draw() >= share) continue;
    for (let l = 0; l < lessonCount; l++) setMinutes(i, l, int(other, i * lessonCount + l));
    refreshActivity(i);
  }
  for (let l = 0; l < lessonCount; l++) {
    const start = drawIndex(activityCount);
    for (let n = 0; n < activityCount && !lessonFits(l); n++) {
      const i = around(start, n, activityCount);
      if (int(minutes, i * lessonCount + l) > 0) remove(i);
    }
  }
}

/** Some lessons in a row are as in the other plan, so that all have room; what is too much or too little in all goes. */
function takeLessons(other: i32): void {
  const from = drawIndex(lessonCount);
  const span = drawInteger(1, max(1, lessonCount - 1));
  for (let i = 0; i < activityCount; i++) {
    if (!differs(i, other)) continue;
    for (let n = 0; n < span; n++) {
      const l = around(from, n, lessonCount);
      setMinutes(i, l, int(other, i * lessonCount + l));
    }
    refreshActivity(i);
    const placed = int(sum, i);
    const isWhole = placed === int(demandOf, i) || placed <= int(maxPartialOf, i);
    if (!isWhole || !keepsRunLimit(minutes, i)) remove(i);
  }
}

/** Takes out what stands before something it rests on is complete, until nothing does. */
function removeEarly(): void {
  let isOver = false;
  while (!isOver) {
    isOver = true;
    for (let i = 0; i < activityCount; i++) {
      if (int(chunks, i) === 0 || int(firstAt, i) >= earliestOf(i)) continue;
      remove(i);
      isOver = false;
    }
  }
}

function differs(i: i32, other: i32): bool {
  for (let cell = i * lessonCount; cell < (i + 1) * lessonCount; cell++)
    if (int(minutes, cell) !== int(other, cell)) return true;
  return false;
}

function remove(i: i32): void {
  pick(i);
  removeActivity(i);
}
