// Writes a computed plan into the segments of the lessons to come. The same piece of work keeps its row, wherever it
// moves to, so that a note or a link to it lives on; only rows that differ are written.

import { createId, type PlainDate, type Random } from '#core';
import type { CoursePlan, PlannedSegment } from '#planning';
import type {
  CourseUnitId,
  LessonId,
  LessonRecord,
  SegmentId,
  SegmentRecord,
  StrandId,
} from '../record/records.ts';
import { isSameRow } from '../record/same-row.ts';
import type { Transactor } from '../record/store.ts';
import { type CourseRecords, isSettled, segmentsOf } from './course-records.ts';

/** Lays the plan out and takes away what it no longer holds. */
export async function layPlan(
  tx: Transactor,
  records: CourseRecords,
  plan: CoursePlan,
  { today, random }: { readonly today: PlainDate; readonly random: Random },
): Promise<void> {
  const lessonsById = new Map<string, LessonRecord>(records.lessons.map((l) => [l.id, l]));
  const movable = records.lessons
    .filter((l) => !isSettled(records, l, today))
    .flatMap((l) => segmentsOf(records, l.id));
  const rows = rowFinder(movable, new Set(plan.lessons.map((l) => l.lesson)));

  for (const planned of plan.lessons) {
    const lesson = lessonsById.get(planned.lesson);
    if (lesson === undefined) continue;
    for (const [position, segment] of planned.segments.entries()) {
      const row = rows.take(segment, lesson.id);
      const next = segmentRow(segment, lesson, position, row, random);
      if (row === null || !isSameRow(row, next)) await tx.put('segment', next);
    }
    const laid = { ...lesson, overrun: tidyShare(planned.overrun), ongoing: planned.ongoing };
    if (!isSameRow(lesson, laid)) await tx.put('lesson', laid);
    lessonsById.set(lesson.id, laid);
  }

  for (const row of rows.rest()) {
    await keepNote(tx, row, lessonsById);
    await tx.remove('segment', row.id);
  }
}

/** Hands out the stored row for each planned segment: by key, else by what was pinned by hand in that lesson. */
function rowFinder(rows: readonly SegmentRecord[], openLessons: ReadonlySet<string>) {
  const free = new Map<SegmentId, SegmentRecord>(rows.map((r) => [r.id, r]));
  const byKey = new Map<string, SegmentRecord>();
  for (const row of rows) if (!byKey.has(row.key)) byKey.set(row.key, row);
  return {
    take(segment: PlannedSegment, lesson: LessonId): SegmentRecord | null {
      const pinned = segment.pinned
        ? [...free.values()].find((row) => row.pinned && row.lesson === lesson && isSameWork(row, segment))
        : undefined;
      const keyed = byKey.get(segment.key);
      const row =
        pinned ??
        (keyed !== undefined && free.has(keyed.id) && !(keyed.pinned && openLessons.has(keyed.lesson))
          ? keyed
          : undefined);
      if (row === undefined) return null;
      free.delete(row.id);
      return row;
    },
    rest: (): readonly SegmentRecord[] => [...free.values()],
  };
}

/** A revisit is known by its skill, whatever unit it came from; work by its activity. */
function isSameWork(row: SegmentRecord, segment: PlannedSegment): boolean {
  if (row.kind === 'revisit' || segment.kind === 'revisit')
    return row.kind === segment.kind && row.skill === segment.skill;
  return row.courseUnit === segment.courseUnit && row.activity === segment.activity;
}

function segmentRow(
  segment: PlannedSegment,
  lesson: LessonRecord,
  position: number,
  row: SegmentRecord | null,
  random: Random,
): SegmentRecord {
  return {
    id: row?.id ?? createId('segment', random),
    lesson: lesson.id,
    course: lesson.course,
    position,
    key: segment.key,
    kind: segment.kind,
    // Planning hands back the ids that it was given.
    strand: segment.strand as StrandId | null,
    courseUnit: segment.courseUnit as CourseUnitId | null,
    activity: segment.activity,
    skill: segment.skill,
    title: segment.title,
    start: segment.start,
    minutes: segment.minutes,
    completes: segment.completes,
    pinned: segment.pinned,
    reasons: segment.reasons,
    seconds: row?.seconds ?? null,
    covered: row?.covered ?? null,
    outcome: row?.outcome ?? null,
    note: row?.note ?? '',
  };
}

/** A note written on work that fell out of the plan is not lost: it joins its lesson's note. */
async function keepNote(
  tx: Transactor,
  row: SegmentRecord,
  lessonsById: Map<string, LessonRecord>,
): Promise<void> {
  const lesson = lessonsById.get(row.lesson);
  if (row.note === '' || lesson === undefined) return;
  const line = `${row.title}: ${row.note}`;
  const kept = { ...lesson, note: lesson.note === '' ? line : `${lesson.note}\n\n${line}` };
  lessonsById.set(lesson.id, kept);
  await tx.put('lesson', kept);
}

const tidyShare = (share: number) => Math.round(share * 10_000) / 10_000;
