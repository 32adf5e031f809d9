// A day as a programme: its lessons in order, what lies between two of them, where now is, and which lesson the one
// primary action belongs to.

import type { DayLesson } from '#contract';
import { minutesOf, type PlainDate } from '#core';
import type { StudioNow } from './studio-now.ts';

/** `over` had its time; `now` is within it; `next` is the first still to come; `later` follows; `off` is not given. */
export type DayPlace = 'over' | 'now' | 'next' | 'later' | 'off';

export type DayRow =
  | {
      readonly kind: 'lesson';
      readonly lesson: DayLesson;
      readonly place: DayPlace;
      /** Whole minutes since the lesson began, while it is now. */
      readonly minute: number | null;
      /** Teaching is offered here. */
      readonly teach: boolean;
    }
  /** Minutes are 0 when back to back and negative when two lessons overlap. `now` when the moment lies in here. */
  | {
      readonly kind: 'between';
      readonly after: DayLesson['id'];
      readonly minutes: number;
      readonly now: boolean;
    };

/** Whether a lesson takes up its time: not cancelled and not missed. */
const stands = (lesson: DayLesson): boolean => lesson.status === 'planned' || lesson.status === 'taught';
const startOf = (lesson: DayLesson): number => minutesOf(lesson.time);
const endOf = (lesson: DayLesson): number => startOf(lesson) + lesson.minutes;

/**
 * The rows of a day page. Lessons are put in order of time; gaps count between lessons that stand, so a cancelled one
 * leaves its time free. On another day than today nothing is now, and teaching is offered nowhere.
 */
export function dayProgramme(
  date: PlainDate,
  lessons: readonly DayLesson[],
  now: StudioNow,
): readonly DayRow[] {
  const inOrder = [...lessons].sort((a, b) => startOf(a) - startOf(b) || a.id.localeCompare(b.id));
  const today = date === now.date;
  const minute = minutesOf(now.time);
  const open = inOrder.filter((l) => l.status === 'planned');
  const current = today ? open.find((l) => startOf(l) <= minute && minute < endOf(l)) : undefined;
  const coming = today ? open.find((l) => startOf(l) > minute) : undefined;
  const teach = current ?? coming;

  const placeOf = (lesson: DayLesson): DayPlace => {
    if (!stands(lesson)) return 'off';
    if (lesson === current) return 'now';
    if (lesson === coming && !current) return 'next';
    if (!today) return date < now.date ? 'over' : 'later';
    return lesson.status === 'taught' || endOf(lesson) <= minute ? 'over' : 'later';
  };

  const rows: DayRow[] = [];
  let busyUntil: number | null = null;
  let last: DayLesson['id'] | null = null;
  for (const lesson of inOrder) {
    if (stands(lesson)) {
      if (busyUntil !== null && last !== null) {
        const within = today && !current && busyUntil <= minute && minute < startOf(lesson);
        rows.push({ kind: 'between', after: last, minutes: startOf(lesson) - busyUntil, now: within });
      }
      busyUntil = Math.max(busyUntil ?? 0, endOf(lesson));
      last = lesson.id;
    }
    rows.push({
      kind: 'lesson',
      lesson,
      place: placeOf(lesson),
      minute: lesson === current ? minute - startOf(lesson) : null,
      teach: lesson === teach,
    });
  }
  return rows;
}

/** Lessons given, minutes taught in all, and the first and last minute of the day; null when no lesson stands. */
export function dayExtent(
  lessons: readonly DayLesson[],
): { readonly lessons: number; readonly minutes: number; readonly from: number; readonly to: number } | null {
  const standing = lessons.filter(stands);
  if (standing.length === 0) return null;
  return {
    lessons: standing.length,
    minutes: standing.reduce((sum, l) => sum + l.minutes, 0),
    from: Math.min(...standing.map(startOf)),
    to: Math.max(...standing.map(endOf)),
  };
}
