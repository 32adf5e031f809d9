// Roughly in which lesson each activity will start, before anything is planned: strands share each lesson's room evenly
// and go through their work in order. Good enough to say which skills will be rested on soon.

import type { LessonFrame } from './lesson-frame.ts';

/** Share of a lesson's room that the chance of overrun leaves for expected minutes, about. */
export const usableShare = 0.75;

/** The lesson index at which each piece of work is about to start; the number of lessons when beyond the last. */
export function estimateStarts(
  work: readonly { readonly id: string; readonly strand: string; readonly demand: number }[],
  frames: readonly LessonFrame[],
  mostStrands: number,
): ReadonlyMap<string, number> {
  const strands = new Set(work.map((w) => w.strand));
  const sharing = Math.max(1, strands.size);
  const startById = new Map<string, number>();
  for (const strand of strands) {
    const queue = work.filter((w) => w.strand === strand);
    let at = 0;
    let done = 0;
    frames.forEach((frame, lesson) => {
      let share =
        Math.max(0, frame.room * usableShare - frame.recap) / Math.min(sharing, Math.max(1, mostStrands));
      // With more strands than a lesson holds, each has its turn only now and then.
      share *= Math.min(1, mostStrands / sharing);
      while (at < queue.length && share > 0) {
        const now = queue[at];
        if (now === undefined) break;
        if (!startById.has(now.id)) startById.set(now.id, lesson);
        const step = Math.min(share, now.demand - done);
        share -= step;
        done += step;
        if (done >= now.demand) {
          at++;
          done = 0;
        }
      }
    });
    for (const left of queue) if (!startById.has(left.id)) startById.set(left.id, frames.length);
  }
  return startById;
}
