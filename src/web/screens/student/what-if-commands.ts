// Turns what a teacher tries out into the commands that would make it so: the same commands are shown first and, if kept,
// sent.

import type { CourseView, Step } from '#contract';
import { type Id, isDate, type PlainDate } from '#core';
import type { UnitId } from '#planning';

/** What is tried; null and empty stay as they are. */
export interface Trial {
  readonly away: { readonly from: PlainDate; readonly to: PlainDate } | null;
  readonly minutes: number | null;
  readonly unit: {
    readonly unit: UnitId;
    readonly strand: Id<'strand'>;
    readonly courseUnit: Id<'course-unit'>;
  } | null;
  /** New days by strand; null takes a deadline away. */
  readonly deadlines: ReadonlyMap<Id<'strand'>, PlainDate | null>;
}

/** Planned lessons from one day to another, both included. */
export function lessonsWithin(course: Pick<CourseView, 'bars'>, from: PlainDate, to: PlainDate) {
  return course.bars.flatMap((bar) =>
    bar.kind === 'lesson' && bar.status === 'planned' && from <= bar.date && bar.date <= to ? [bar] : [],
  );
}

/** The commands of a trial in the order they are to be sent; empty when nothing is tried. */
export function trialToCommands(course: CourseView, trial: Trial, awayReason: string): Step[] {
  const seen = course.revision;
  const commands: Step[] = [];
  if (trial.away)
    for (const { lesson } of lessonsWithin(course, trial.away.from, trial.away.to))
      commands.push({ type: 'lesson.cancel', lesson, reason: awayReason });
  const { minutes } = trial;
  if (minutes !== null)
    for (const slot of course.slots)
      if (slot.minutes !== minutes && (slot.ends === null || slot.ends >= course.today))
        commands.push({ type: 'slot.put', seen, course: course.id, slot: { ...slot, minutes } });
  if (trial.unit) commands.push({ type: 'courseUnit.give', seen, course: course.id, ...trial.unit });
  const strands = course.strands.map((strand) => {
    const deadline = trial.deadlines.get(strand.id);
    return deadline === undefined ? { ...strand } : { ...strand, deadline };
  });
  if (strands.some((strand, i) => strand.deadline !== course.strands[i]?.deadline))
    commands.push({ type: 'course.change', seen, course: course.id, strands });
  return commands;
}

/** A day as typed, or null while it is none. */
export const dayOrNull = (text: string): PlainDate | null => (isDate(text) ? text : null);
