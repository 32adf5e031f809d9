// Skills learnt on the way will ask for revisits that no one knows yet. A lesson filled to the brim would have to be laid
// out anew each time one does, so a moment is kept for it.

import type { ProblemLesson } from '../problem/problem.ts';

/** What is learnt in a course's first lessons is in the recap of the next and still fresh in the one after. Our own choice. */
const freshLessons = 3;
/** A lesson too short to give up a moment keeps its minutes for work. */
const leastShare = 3;

/**
 * Lessons with the time for revisits taken off their room, from the second to come and the fourth of the course on, as far
 * as no known revisit will want it. `dues` are the lesson indexes from which the known ones may stand, in any order;
 * `minutes` is the length of one; `taught` lessons of the course came before.
 */
export function keepMoments(
  lessons: readonly ProblemLesson[],
  dues: readonly number[],
  minutes: number,
  taught: number,
): readonly ProblemLesson[] {
  const waiting = [...dues].sort((a, b) => a - b);
  return lessons.map((lesson, at) => {
    let free = minutes > 0 ? Math.floor(lesson.reviewMax / minutes) : 0;
    while (free > 0 && waiting.length > 0 && (waiting[0] ?? 0) <= at) {
      waiting.shift();
      free--;
    }
    const kept = free * minutes;
    // All that is due in the next lesson is known.
    const mayBring = at > 0 && taught + at >= freshLessons;
    const isLongEnough = lesson.length - lesson.fixed >= leastShare * (lesson.recap + kept);
    return mayBring && isLongEnough ? { ...lesson, fixed: lesson.fixed + kept } : lesson;
  });
}
