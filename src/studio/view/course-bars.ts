// The bars of the course score: lessons of all kinds, and stretches of holiday that silence a lesson, in date order.

import type { BarView, SegmentView } from '#contract';
import type { PlainDate } from '#core';
import { formatReason, type SkillId } from '#planning';
import { lessonDates } from '../calendar/lesson-dates.ts';
import { type CourseRecords, segmentsOf } from '../course/course-records.ts';
import { listAbsent } from '../lesson/absence.ts';
import { numberLessons } from '../lesson/lesson-numbers.ts';
import type { HolidayRecord, SegmentId, SegmentRecord, StudentId, StudentRecord } from '../record/records.ts';

export interface BarsContext {
  readonly records: CourseRecords;
  readonly holidays: readonly HolidayRecord[];
  /** Units whose core work is not all planned: their check has no place yet. */
  readonly unfinishedUnits: ReadonlySet<string>;
  readonly skillTitle: (skill: SkillId) => string;
  readonly absentById: ReadonlyMap<StudentId, StudentRecord>;
}

/** All bars. */
export function listBars(context: BarsContext): readonly BarView[] {
  const { records, holidays } = context;
  const numbers = numberLessons(records.lessons);
  const moved = new Set(records.course.moved.flatMap((m) => (m.to === null ? [] : [m.key])));
  const ends = findUnitEnds(context);
  const lessons = records.lessons.map(
    (lesson): BarView => ({
      kind: 'lesson',
      lesson: lesson.id,
      number: numbers.get(lesson.id) ?? null,
      date: lesson.date,
      time: lesson.time,
      minutes: lesson.minutes,
      status: lesson.status,
      reason: lesson.reason,
      barred: lesson.barred,
      absent: listAbsent(lesson, context.absentById),
      overrun: lesson.overrun,
      segments: segmentsOf(records, lesson.id).map((segment) =>
        toSegmentView(segment, {
          endsUnit: ends.has(segment.id),
          moved: lesson.status === 'planned' && moved.has(segment.key),
          skillTitle: context.skillTitle,
        }),
      ),
    }),
  );
  const rests = holidays
    .filter((h) => silencesLesson(records, h))
    .map((h): BarView => ({ kind: 'rest', from: h.starts, to: h.ends, name: h.name }));
  const dateOf = (bar: BarView): PlainDate => (bar.kind === 'rest' ? bar.from : bar.date);
  return [...lessons, ...rests].sort((a, b) => (dateOf(a) < dateOf(b) ? -1 : dateOf(a) > dateOf(b) ? 1 : 0));
}

/** Whether a weekly lesson would have fallen into the holiday, between the course's first lesson and its last. */
function silencesLesson({ slots, lessons }: CourseRecords, holiday: HolidayRecord): boolean {
  const first = lessons[0];
  const last = lessons.at(-1);
  if (first === undefined || last === undefined) return false;
  if (holiday.ends < first.date || holiday.starts > last.date) return false;
  return slots.some((slot) => lessonDates(slot, [holiday], [], holiday.starts).length > 0);
}

/** The last core segment of each unit, where its check stands. */
function findUnitEnds({ records, unfinishedUnits }: BarsContext): ReadonlySet<SegmentId> {
  const lastByUnit = new Map<string, SegmentId>();
  for (const lesson of records.lessons) {
    if (lesson.status !== 'planned' && lesson.status !== 'taught') continue;
    for (const s of segmentsOf(records, lesson.id))
      if (s.kind === 'work' && s.courseUnit !== null && s.outcome !== 'skipped')
        lastByUnit.set(s.courseUnit, s.id);
  }
  return new Set([...lastByUnit].filter(([unit]) => !unfinishedUnits.has(unit)).map(([, id]) => id));
}

function toSegmentView(
  segment: SegmentRecord,
  of: {
    readonly endsUnit: boolean;
    readonly moved: boolean;
    readonly skillTitle: (skill: SkillId) => string;
  },
): SegmentView {
  const { id, key, kind, strand, courseUnit, activity, skill, title, start, minutes } = segment;
  return {
    id,
    key,
    kind,
    strand,
    courseUnit,
    activity,
    skill,
    title,
    start,
    minutes,
    completes: segment.completes,
    endsUnit: of.endsUnit,
    pinned: segment.pinned,
    outcome: segment.outcome,
    actualMinutes: measuredMinutes(segment),
    reasons: segment.reasons.map((reason) => formatReason(reason, { skillTitle: of.skillTitle })),
    moved: of.moved,
  };
}

/** Null where nothing was measured; a clock at nought on what was done all the same was only touched. */
function measuredMinutes({ seconds, outcome }: Pick<SegmentRecord, 'seconds' | 'outcome'>): number | null {
  const untouched = seconds === 0 && outcome !== null && outcome !== 'skipped';
  return seconds === null || untouched ? null : Math.round(seconds / 6) / 10;
}
