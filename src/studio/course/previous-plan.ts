// The plan as it stands, read back from the records, so that the next one can stay near it and say what moved.

import type { PlainDate } from '#core';
import type { CoursePlan, LessonPlan, PlannedSegment } from '#planning';
import type { LessonRecord, SegmentRecord } from '../record/records.ts';
import { type CourseRecords, isSettled, segmentsOf } from './course-records.ts';

/** The planned lessons with their segments; null when nothing was planned yet. */
export function previousPlan(records: CourseRecords, today: PlainDate): CoursePlan | null {
  const lessons = records.lessons.flatMap((lesson) => {
    if (lesson.status !== 'planned') return [];
    const segments = segmentsOf(records, lesson.id);
    return segments.length === 0 ? [] : [lessonPlan(lesson, segments)];
  });
  if (lessons.length === 0) return null;
  const settled = records.lessons.some((l) => isSettled(records, l, today));
  const hasWork = lessons.some((l) => l.segments.some((s) => s.kind === 'work'));
  if (!settled && !hasWork) return null;
  return {
    lessons,
    notReady: [],
    cycles: [],
    ...(records.course.plan ?? { fingerprint: '', pace: { mean: 0, sd: 0, observations: 0 }, leftOut: [] }),
    objective: { U: 0, P: 0, E: 0 },
  };
}

function lessonPlan(lesson: LessonRecord, segments: readonly SegmentRecord[]): LessonPlan {
  return {
    lesson: lesson.id,
    date: lesson.date,
    segments: segments.map(plannedSegment),
    overrun: lesson.overrun,
    ongoing: lesson.ongoing,
  };
}

function plannedSegment(segment: SegmentRecord): PlannedSegment {
  const {
    key,
    kind,
    strand,
    courseUnit,
    activity,
    skill,
    title,
    start,
    minutes,
    completes,
    pinned,
    reasons,
  } = segment;
  return {
    key,
    kind,
    strand,
    courseUnit,
    activity,
    skill,
    title,
    start,
    minutes,
    // Planning gives work and revisits exactly the minutes it means; only the frame of a lesson is stretched.
    planned: minutes,
    completes,
    pinned,
    reasons,
  };
}
