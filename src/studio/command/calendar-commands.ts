// Terms and holidays: each change lays the coming lessons of every course anew.

import type { Fault } from '#contract';
import { daysBetween, err, ok } from '#core';
import { formatDay } from '#planning';
import { findSpan, longestSpan, type Span } from '../calendar/lesson-dates.ts';
import type { HolidayRecord } from '../record/records.ts';
import { formatCount } from '../sentence/amounts.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { notFound } from './fault.ts';
import { remakeLessons } from './remake-lessons.ts';

export const putTerm: Handler<'term.put'> = async (desk, { term }) => {
  const fault = findSpanFault(term, term.name);
  if (fault !== null) return err({ ...fault, field: 'term.ends' });
  const others = (await desk.tx.list('term')).filter((t) => t.id !== term.id);
  const overlapping = others.find((t) => t.starts <= term.ends && term.starts <= t.ends);
  if (overlapping !== undefined)
    desk.notices.push(`${term.name} overlaps with ${overlapping.name}; days in both count once.`);
  await desk.tx.put('term', term);
  await remakeAll(desk);
  return ok(`Set the term ${term.name}, ${formatSpan(term)}`);
};

export const removeTerm: Handler<'term.remove'> = async (desk, { term: id }) => {
  const term = await desk.tx.get('term', id);
  if (term === null) return notFound('term');
  await desk.tx.remove('term', id);
  await remakeAll(desk);
  return ok(`Removed the term ${term.name}`);
};

export const putHolidays: Handler<'holiday.putMany'> = async (desk, { holidays }) => {
  for (const holiday of holidays) {
    const fault = findSpanFault(holiday, holiday.name);
    if (fault !== null) return err({ ...fault, field: 'holidays' });
  }
  const bySource = new Map(
    (await desk.tx.list('holiday')).flatMap((h) => (h.source === '' ? [] : [[h.source, h]])),
  );
  const put: HolidayRecord[] = [];
  for (const holiday of holidays) {
    // The same calendar imported again brings its events up to date instead of doubling them.
    const known = holiday.source === '' ? undefined : bySource.get(holiday.source);
    const row = known === undefined ? holiday : { ...holiday, id: known.id };
    await desk.tx.put('holiday', row);
    put.push(row);
  }
  await remakeAll(desk);
  const cancelled = await cancelWithin(desk, put);
  if (cancelled > 0)
    desk.notices.push(
      `${formatCount(cancelled, 'lesson')} with notes or moved by hand fell into the holidays: cancelled, not removed.`,
    );
  const [only] = put;
  return ok(
    put.length === 1 && only !== undefined
      ? `Set the holiday ${only.name}, ${formatSpan(only)}`
      : `Set ${formatCount(put.length, 'holiday')}`,
  );
};

export const removeHoliday: Handler<'holiday.remove'> = async (desk, { holiday: id }) => {
  const holiday = await desk.tx.get('holiday', id);
  if (holiday === null) return notFound('holiday');
  await desk.tx.remove('holiday', id);
  const others = await desk.tx.list('holiday');
  // Lessons that were cancelled only because of it are on again.
  for (const lesson of await desk.tx.list('lesson', {
    where: { status: 'cancelled', reason: holiday.name },
    range: { column: 'date', from: latest(holiday.starts, desk.today), to: holiday.ends },
  })) {
    if (findSpan(others, lesson.date) !== null) continue;
    await takeCourse(desk, lesson.course);
    await desk.tx.put('lesson', { ...lesson, status: 'planned', reason: '' });
    touchCourse(desk, lesson.course);
  }
  await remakeAll(desk);
  return ok(`Removed the holiday ${holiday.name}`);
};

/** Lays the coming lessons of every course anew. */
export async function remakeAll(desk: Desk): Promise<void> {
  for (const course of await desk.tx.list('course')) {
    if (course.ended !== null && course.ended < desk.today) continue;
    await takeCourse(desk, course.id);
    await remakeLessons(desk, course.id);
  }
}

/** Cancels the planned lessons to come that still fall into the holidays just put. */
async function cancelWithin(desk: Desk, holidays: readonly HolidayRecord[]): Promise<number> {
  let count = 0;
  for (const holiday of holidays)
    for (const lesson of await desk.tx.list('lesson', {
      where: { status: 'planned' },
      range: { column: 'date', from: latest(holiday.starts, desk.today), to: holiday.ends },
    })) {
      await takeCourse(desk, lesson.course);
      await desk.tx.put('lesson', { ...lesson, status: 'cancelled', reason: holiday.name });
      touchCourse(desk, lesson.course);
      count++;
    }
  return count;
}

/** `1 September to 18 December`, or the one day. */
const formatSpan = ({ starts, ends }: Span): string =>
  starts === ends ? formatDay(starts) : `${formatDay(starts)} to ${formatDay(ends)}`;

function findSpanFault(span: Span, name: string): Fault | null {
  const days = daysBetween(span.starts, span.ends);
  if (days < 0)
    return {
      kind: 'Invalid',
      message: `${name} ends on ${span.ends}, before it starts on ${span.starts}. Swap or mend the dates.`,
    };
  if (days > longestSpan)
    return {
      kind: 'Invalid',
      message: `${name} is ${days} days long; at most ${longestSpan} are allowed. Check the years.`,
    };
  return null;
}

const latest = <T extends string>(a: T, b: T): T => (a > b ? a : b);
