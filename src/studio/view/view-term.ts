// Terms, holidays and the weekly timetable.

import type { TermView } from '#contract';
import { findInstrument } from '#music';
import { overlap } from '../calendar/find-clashes.ts';
import { loadLearner } from '../course/course-records.ts';
import type { SlotRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import type { ViewOutside } from './view-studio.ts';

/** The view of the calendar. */
export async function viewTerm(reader: Reader, { clock }: ViewOutside): Promise<TermView> {
  const today = clock.today();
  const terms: TermView['terms'][number][] = [];
  for (const { id, name, starts, ends } of await reader.list('term', { orderBy: ['starts'] })) {
    const lessons = await reader.list('lesson', { range: { column: 'date', from: starts, to: ends } });
    const held = lessons.filter((l) => l.status === 'planned' || l.status === 'taught').length;
    terms.push({ id, name, starts, ends, lessons: held });
  }
  const slots = (await reader.list('slot')).filter((s) => s.ends === null || s.ends >= today);
  const week: TermView['week'][number][] = [];
  for (const slot of slots) {
    const course = await reader.get('course', slot.course);
    if (course === null || (course.ended !== null && course.ended < today)) continue;
    const learner = await loadLearner(reader, course);
    week.push({
      slot: slot.id,
      course: course.id,
      courseRevision: course.revision,
      learner: learner.name,
      students: learner.students.map(({ id }) => id),
      instrumentName: findInstrument(course.instrument)?.name ?? course.instrument,
      weekday: slot.weekday,
      time: slot.time,
      minutes: slot.minutes,
      clash: false,
    });
  }
  const slotsById = new Map(slots.map((s) => [s.id, s]));
  const clashes = (a: TermView['week'][number], b: TermView['week'][number]) =>
    a !== b &&
    a.weekday === b.weekday &&
    overlap(a, b) &&
    sameWeeks(slotsById.get(a.slot), slotsById.get(b.slot));
  return {
    terms,
    holidays: (await reader.list('holiday', { orderBy: ['starts'] })).map(
      ({ id, name, starts, ends, source }) => ({ id, name, starts, ends, source }),
    ),
    week: week
      .map((slot) => ({ ...slot, clash: week.some((other) => clashes(slot, other)) }))
      .sort((a, b) => a.weekday - b.weekday || (a.time < b.time ? -1 : a.time > b.time ? 1 : 0)),
  };
}

/** Whether two weekly lessons ever run in the same weeks. */
function sameWeeks(a: SlotRecord | undefined, b: SlotRecord | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  return (a.ends === null || b.starts <= a.ends) && (b.ends === null || a.starts <= b.ends);
}
