// What the score shows, in order, before any width is known: the bars, which events stand at which barline, and where
// *now* is. A boundary is counted by the bar it stands before; `bars.length` is the end of the course.

import type { BarView, CourseView, LessonBarView, SegmentView } from '#contract';
import { daysBetween, type PlainDate } from '#core';

export type CourseEvent = CourseView['events'][number];

/** Where today falls: at a barline, or part of the way (0..1) through a bar of rest. */
export type Now =
  | { readonly kind: 'boundary'; readonly before: number }
  | { readonly kind: 'inside'; readonly bar: number; readonly share: number };

export interface Timeline {
  readonly bars: readonly BarView[];
  /** Events by the boundary they stand at. */
  readonly eventsByBoundary: ReadonlyMap<number, readonly CourseEvent[]>;
  readonly now: Now;
}

/** Lays out in order what a course holds; the view's bars are in date order already. */
export function courseToTimeline(course: Pick<CourseView, 'bars' | 'events' | 'today'>): Timeline {
  const eventsByBoundary = new Map<number, CourseEvent[]>();
  for (const event of [...course.events].sort((a, b) => (a.date < b.date ? -1 : 1))) {
    const boundary = boundaryAfter(course.bars, event.date);
    eventsByBoundary.set(boundary, [...(eventsByBoundary.get(boundary) ?? []), event]);
  }
  return { bars: course.bars, eventsByBoundary, now: findNow(course) };
}

/** The boundary after everything that begins on or before a day. */
export function boundaryAfter(bars: readonly BarView[], date: PlainDate): number {
  const next = bars.findIndex((bar) => barStarts(bar) > date);
  return next === -1 ? bars.length : next;
}

/** The first day of a bar. */
export const barStarts = (bar: BarView) => (bar.kind === 'rest' ? bar.from : bar.date);

/** A name for a bar that stays the same from plan to plan. */
export const barId = (bar: BarView): string => (bar.kind === 'rest' ? `rest:${bar.from}` : bar.lesson);

/** Whether a lesson takes up its minutes on the page; cancelled and missed ones are drawn narrow. */
export const isGiven = (bar: LessonBarView) => bar.status === 'planned' || bar.status === 'taught';

/** A segment as it was done or is planned, in minutes after the lesson's start. */
export interface TimedSegment {
  readonly segment: SegmentView;
  readonly start: number;
  readonly minutes: number;
}

export interface BarTimes {
  /** The minutes the bar is wide: its lesson's, or what it really took when that was more. */
  readonly span: number;
  readonly timed: readonly TimedSegment[];
  /** Planned, but not done. */
  readonly skipped: readonly SegmentView[];
}

/**
 * Where each segment falls. A planned lesson is taken from the plan; in a taught one the segments follow one another
 * with the minutes they really took, and what was passed over is listed apart.
 */
export function barToTimes(bar: LessonBarView): BarTimes {
  const inOrder = [...bar.segments].sort((a, b) => a.start - b.start);
  if (!isGiven(bar)) return { span: bar.minutes, timed: [], skipped: inOrder };
  if (bar.status === 'planned') {
    const timed = inOrder.map((segment) => ({ segment, start: segment.start, minutes: segment.minutes }));
    const end = Math.max(bar.minutes, ...timed.map((t) => t.start + t.minutes));
    return { span: end, timed, skipped: [] };
  }
  const timed: TimedSegment[] = [];
  const skipped: SegmentView[] = [];
  let clock = 0;
  for (const segment of inOrder) {
    const minutes = segment.outcome === 'skipped' ? 0 : (segment.actualMinutes ?? segment.minutes);
    if (minutes <= 0) {
      skipped.push(segment);
      continue;
    }
    timed.push({ segment, start: clock, minutes });
    clock += minutes;
  }
  return { span: Math.max(bar.minutes, clock), timed, skipped };
}

function findNow({ bars, today }: Pick<CourseView, 'bars' | 'today'>): Now {
  for (const [index, bar] of bars.entries()) {
    if (bar.kind === 'rest') {
      if (bar.from <= today && today <= bar.to) {
        const days = daysBetween(bar.from, bar.to) + 1;
        return { kind: 'inside', bar: index, share: (daysBetween(bar.from, today) + 0.5) / days };
      }
      if (bar.from > today) return { kind: 'boundary', before: index };
    } else if (bar.date > today || (bar.date === today && bar.status === 'planned')) {
      return { kind: 'boundary', before: index };
    }
  }
  return { kind: 'boundary', before: bars.length };
}
