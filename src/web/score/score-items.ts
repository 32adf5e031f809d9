// Everything on a score that can be looked at or acted on, by the id it carries in the drawing.

import type { CourseView, LessonBarView, SegmentView } from '#contract';
import { type Description, describeBar, describeSegment, type Writing } from './describe.ts';
import type { ScoreLayout } from './layout.ts';
import { rowOf } from './layout.ts';
import { barId, barToTimes } from './timeline.ts';

export type ScoreItem =
  | { readonly kind: 'rest'; readonly id: string; readonly description: Description }
  | {
      readonly kind: 'bar';
      readonly id: string;
      readonly bar: LessonBarView;
      readonly description: Description;
    }
  | {
      readonly kind: 'segment';
      readonly id: string;
      readonly bar: LessonBarView;
      readonly segment: SegmentView;
      readonly row: number;
      readonly description: Description;
    };

/** All of a course, in order. */
export function courseToItems(course: CourseView, writing: Writing): ReadonlyMap<string, ScoreItem> {
  const items = new Map<string, ScoreItem>();
  for (const bar of course.bars) {
    const id = barId(bar);
    if (bar.kind === 'rest') {
      items.set(id, { kind: 'rest', id, description: describeBar(bar, null, writing) });
      continue;
    }
    const times = barToTimes(bar);
    items.set(id, { kind: 'bar', id, bar, description: describeBar(bar, times, writing) });
    const add = (segment: SegmentView, at: { readonly start: number; readonly minutes: number }) =>
      items.set(segment.id, {
        kind: 'segment',
        id: segment.id,
        bar,
        segment,
        row: rowOf(course, segment),
        description: describeSegment(
          segment,
          bar,
          at,
          course.strands[rowOf(course, segment)] ?? null,
          writing,
        ),
      });
    for (const { segment, start, minutes } of times.timed) add(segment, { start, minutes });
    for (const segment of times.skipped) add(segment, segment);
  }
  return items;
}

/** The lessons that a segment can be moved to, in order: planned, and not kept free. */
export function landingBars(course: Pick<CourseView, 'bars'>): readonly LessonBarView[] {
  return course.bars.flatMap((bar) =>
    bar.kind === 'lesson' && bar.status === 'planned' && !bar.barred ? [bar] : [],
  );
}

/** What had the focus: a bar, or a segment of the given key in a bar. */
export interface FocusPlace {
  readonly id: string;
  readonly key: string | null;
  readonly bar: string;
}

/**
 * Where the focus belongs after a replanning: on the same id, or else on the planned block of the same key, or else on the
 * bar that it stood in, or else nowhere.
 */
export function refindFocus(layout: ScoreLayout, place: FocusPlace | null): string | null {
  if (place === null) return null;
  const { id, key } = place;
  let twin: string | null = null;
  let stood: string | null = null;
  for (const system of layout.systems)
    for (const bar of system.bars) {
      if (bar.id === id) return id;
      if (bar.id === place.bar) stood = bar.id;
      for (const block of bar.blocks) {
        if (block.segment.id === id) return id;
        if (key !== null && !block.taught && block.segment.key === key) twin = block.segment.id;
      }
    }
  return twin ?? stood;
}
