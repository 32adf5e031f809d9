// The chunks of a plan by activity and by lesson, for moves that pick some at random.

import { addInt, fillInts, newInts, setInt } from './memory.ts';
import { activityCount, lessonCount } from './model.ts';
import { firstLesson, lessonAfter, never } from './state.ts';

/** Cells with minutes, by activity. */
export let cells: i32 = 0;
export let listed: i32 = 0;
/** Activity of each in the list, and where an activity's begin. */
export let listedActivity: i32 = 0;
export let listStart: i32 = 0;
/** Positions in the list by lesson: `inLesson[l * activityCount + k]`, k < `lessonSize[l]`. */
export let inLesson: i32 = 0;
export let lessonSize: i32 = 0;

export function createChunkList(): void {
  cells = newInts(activityCount * lessonCount);
  listedActivity = newInts(activityCount * lessonCount);
  listStart = newInts(activityCount);
  inLesson = newInts(activityCount * lessonCount);
  lessonSize = newInts(lessonCount);
}

export function listChunks(): void {
  fillInts(lessonSize, lessonCount, 0);
  listed = 0;
  for (let i = 0; i < activityCount; i++) {
    setInt(listStart, i, listed);
    for (let l = firstLesson(i); l !== never; l = lessonAfter(i, l)) {
      setInt(cells, listed, i * lessonCount + l);
      setInt(listedActivity, listed, i);
      setInt(inLesson, l * activityCount + addInt(lessonSize, l, 1) - 1, listed);
      listed++;
    }
  }
}
