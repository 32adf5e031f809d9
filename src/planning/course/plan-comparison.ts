// Two plans of one course side by side, sorted by what can still move.

import type { PlainDate } from '#core';
import type { CoursePlan, MoveContext, PlannedSegment } from './course-plan.ts';

/** A segment of work or a revisit in its lesson. */
export interface PlacedSegment {
  readonly segment: PlannedSegment;
  readonly lesson: string;
  readonly date: PlainDate;
}

/** The two plans as far as they can be compared. */
export interface Comparison {
  readonly before: CoursePlan;
  readonly after: CoursePlan;
  readonly context: MoveContext;
  /** What the plan before had in lessons taught meanwhile. */
  readonly spent: readonly PlacedSegment[];
  /** What it had in other lessons, those that are gone included. */
  readonly coming: readonly PlacedSegment[];
  readonly now: readonly PlacedSegment[];
  /** Lessons of the plan before that are neither taught nor still to come. */
  readonly goneLessons: ReadonlySet<string>;
}

/** One change of place or minutes, before its cause is known. */
export interface Change {
  readonly old: PlacedSegment | null;
  readonly now: PlacedSegment | null;
}

/** Sets two plans side by side. */
export function comparePlans(before: CoursePlan, after: CoursePlan, context: MoveContext): Comparison {
  const taughtIds = new Set(context.taught.map((lesson) => lesson.id));
  const laterIds = new Set(after.lessons.map((lesson) => lesson.lesson));
  const placed = placedSegments(before);
  return {
    before,
    after,
    context,
    spent: placed.filter((p) => taughtIds.has(p.lesson)),
    coming: placed.filter((p) => !taughtIds.has(p.lesson)),
    now: placedSegments(after),
    goneLessons: new Set([
      ...context.gone,
      ...before.lessons.map((l) => l.lesson).filter((id) => !taughtIds.has(id) && !laterIds.has(id)),
    ]),
  };
}

function placedSegments(plan: CoursePlan): readonly PlacedSegment[] {
  return plan.lessons.flatMap(({ lesson, date, segments }) =>
    segments
      .filter(({ kind }) => kind === 'work' || kind === 'extension' || kind === 'revisit')
      .map((segment) => ({ segment, lesson, date })),
  );
}
