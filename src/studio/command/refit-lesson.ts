// Cuts or stretches a lesson's segments to its length, in the store.

import { fitSegments } from '../lesson/fit-segments.ts';
import type { LessonRecord, SegmentRecord } from '../record/records.ts';
import { isSameRow } from '../record/same-row.ts';
import type { Transactor } from '../record/store.ts';

export async function refitLesson(
  tx: Transactor,
  segments: readonly SegmentRecord[],
  lesson: Pick<LessonRecord, 'minutes'>,
): Promise<void> {
  const fitted = fitSegments(segments, lesson.minutes);
  for (const segment of segments) {
    const next = fitted.find((f) => f.id === segment.id);
    if (next === undefined) await tx.remove('segment', segment.id);
    else if (!isSameRow(segment, next)) await tx.put('segment', next);
  }
}
