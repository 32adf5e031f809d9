// Which segment a lesson opens at, and which stands before and after it.

import type { LessonSegmentView } from '#contract';
import type { SegmentId } from './lesson-clock.ts';

type Logged = Pick<LessonSegmentView, 'id' | 'outcome' | 'seconds'>;

/**
 * Where to go on: at the segment whose clock runs; else the last one that has had time and no outcome yet; else the
 * one after the last with an outcome; else the first. Null when the lesson holds nothing.
 */
export function openingSegment(segments: readonly Logged[], running: SegmentId | null): SegmentId | null {
  const runs = segments.find((s) => s.id === running);
  if (runs) return runs.id;
  const reached = segments.findLastIndex((s) => s.outcome !== null || (s.seconds ?? 0) > 0);
  const last = segments[reached];
  if (!last) return segments[0]?.id ?? null;
  return last.outcome === null ? last.id : (segments[reached + 1]?.id ?? last.id);
}

/** The segment so many places on, or null beyond the ends. */
export function segmentBeside<S extends { readonly id: string }>(
  segments: readonly S[],
  id: string,
  by: number,
): S | null {
  const at = segments.findIndex((s) => s.id === id);
  return at < 0 ? null : (segments[at + by] ?? null);
}
