// Which segments are work on an activity. A revisit may name an activity too, but it is a revisit.

import type { ActivityKey } from '#planning';
import type { CourseUnitId, SegmentRecord } from '../record/records.ts';

export interface WorkOf {
  readonly courseUnit: CourseUnitId;
  readonly activity: ActivityKey;
}

/** The activity that a segment works on, or null for revisits and the frame of the lesson. */
export function workOf(segment: Pick<SegmentRecord, 'kind' | 'courseUnit' | 'activity'>): WorkOf | null {
  const { kind, courseUnit, activity } = segment;
  if (kind !== 'work' && kind !== 'extension') return null;
  return courseUnit === null || activity === null ? null : { courseUnit, activity };
}
