// Brings a course's coming lessons in line with its slots, the terms and the holidays. A lesson is known by its slot and
// the day it was made for, so one that was moved, taught or cancelled is not made twice; and what a teacher has touched
// is never taken away.

import type { PlainDate } from '#core';
import type {
  CourseId,
  HolidayRecord,
  LessonId,
  LessonRecord,
  SlotId,
  SlotRecord,
  TermRecord,
} from '../record/records.ts';
import { lessonDates } from './lesson-dates.ts';

export interface ReconcileInput {
  readonly course: CourseId;
  readonly slots: readonly SlotRecord[];
  /** The slots as they were when the lessons were made, where they have just been changed. */
  readonly slotsBefore: readonly SlotRecord[];
  readonly lessons: readonly LessonRecord[];
  /** Lessons with a log, a level, a segment's note or something kept on their practice sheet. */
  readonly begun: ReadonlySet<LessonId>;
  readonly terms: readonly TermRecord[];
  readonly holidays: readonly HolidayRecord[];
  readonly today: PlainDate;
  /** Last day of the course, or null. */
  readonly ended: PlainDate | null;
}

export interface Reconciled {
  readonly added: readonly Omit<LessonRecord, 'id'>[];
  readonly changed: readonly LessonRecord[];
  readonly removed: readonly LessonRecord[];
}

/** What to add, change and remove from `today` on. */
export function reconcileLessons(input: ReconcileInput): Reconciled {
  const { slots, lessons, terms, holidays, today, ended } = input;
  const made = new Set(
    lessons.flatMap((l) => (l.slot !== null && l.slotDate !== null ? [identity(l.slot, l.slotDate)] : [])),
  );
  const wanted = new Set<string>();
  const added: Omit<LessonRecord, 'id'>[] = [];
  for (const slot of slots)
    for (const date of lessonDates(slot, terms, holidays, today)) {
      if (ended !== null && date > ended) continue;
      const key = identity(slot.id, date);
      wanted.add(key);
      if (!made.has(key)) added.push(newLesson(input.course, slot, date));
    }

  const changed: LessonRecord[] = [];
  const removed: LessonRecord[] = [];
  for (const lesson of lessons) {
    const { slot: slotId, slotDate } = lesson;
    if (slotId === null || slotDate === null || lesson.status !== 'planned' || lesson.date < today) continue;
    if (isTouched(lesson, input)) continue;
    const slot = slots.find((s) => s.id === slotId);
    if (slot === undefined || !wanted.has(identity(slotId, slotDate))) removed.push(lesson);
    else if (slot.time !== lesson.time || slot.minutes !== lesson.minutes)
      changed.push({ ...lesson, time: slot.time, minutes: slot.minutes });
  }
  return { added, changed, removed };
}

/** Whether a teacher has moved it, barred it, written in it, begun it or said who is not there. */
function isTouched(lesson: LessonRecord, input: ReconcileInput): boolean {
  const asMade =
    input.slotsBefore.find((s) => s.id === lesson.slot) ?? input.slots.find((s) => s.id === lesson.slot);
  return (
    lesson.note !== '' ||
    lesson.practice !== '' ||
    lesson.barred ||
    lesson.absent !== null ||
    lesson.date !== lesson.slotDate ||
    input.begun.has(lesson.id) ||
    (asMade !== undefined && (asMade.time !== lesson.time || asMade.minutes !== lesson.minutes))
  );
}

const identity = (slot: SlotId, date: PlainDate) => `${slot} ${date}`;

function newLesson(course: CourseId, slot: SlotRecord, date: PlainDate): Omit<LessonRecord, 'id'> {
  return {
    course,
    date,
    time: slot.time,
    minutes: slot.minutes,
    status: 'planned',
    reason: '',
    slot: slot.id,
    slotDate: date,
    barred: false,
    note: '',
    practice: '',
    overrun: 0,
    ongoing: [],
    absent: null,
  };
}
