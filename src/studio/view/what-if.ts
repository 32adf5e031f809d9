// What a few commands would do to a course, with nothing saved: the same rules run in a change that is always undone,
// and the course before and after is compared in sentences.

import type { Command, CourseView, Fault, LessonBarView, Step, WhatIfView } from '#contract';
import { createId, err, ok, type PlainDate, type Result } from '#core';
import { formatDay } from '#planning';
import { applyCommand } from '../command/carry-out.ts';
import type { Outside } from '../command/desk.ts';
import type { CourseId } from '../record/records.ts';
import type { Store } from '../record/store.ts';
import { formatCount } from '../sentence/amounts.ts';
import { viewCourse } from './view-course.ts';

/** Imagines the commands done together; the first refusal is the answer. */
export function whatIf(
  store: Store,
  course: CourseId,
  commands: readonly Step[],
  outside: Outside,
): Promise<Result<WhatIfView, Fault>> {
  return store.imagine(async (tx): Promise<Result<WhatIfView, Fault>> => {
    const before = await viewCourse(tx, course, outside);
    if (before === null) return err({ kind: 'NotFound', message: 'There is no such course any more.' });
    const command: Command = { type: 'together', label: 'What if', commands: [...commands] };
    const done = await applyCommand(tx, createId('change', outside.random), command, outside, true);
    if (!done.ok) return done;
    const after = await viewCourse(tx, course, outside);
    if (after === null) return err({ kind: 'NotFound', message: 'The course would be gone.' });
    return ok({
      course: after,
      changes: [...compareCourses(before, after), ...done.value.notices],
      ends: { before: lastWorkDay(before), after: lastWorkDay(after) },
    });
  });
}

/** What differs between two views of a course, most important first. */
export function compareCourses(before: CourseView, after: CourseView): readonly string[] {
  return [
    ...compareEnds(before, after),
    ...compareReadiness(before, after),
    ...compareLeftOut(before, after),
    ...compareUnitEnds(before, after),
    ...compareLessons(before, after),
    ...compareMoves(before, after),
  ];
}

function compareEnds(before: CourseView, after: CourseView): readonly string[] {
  const [was, will] = [lastWorkDay(before), lastWorkDay(after)];
  if (was === will) return [];
  if (will === null) return ['No work would be planned any more.'];
  if (was === null) return [`The last planned work would be on ${formatDay(will)}.`];
  return [
    `The planned work would end on ${formatDay(will)} instead of ${formatDay(was)}${will > was ? ': later' : ': sooner'}.`,
  ];
}

const keyOf = (entry: { readonly courseUnit: string; readonly activity: string }) =>
  `${entry.courseUnit} ${entry.activity}`;

/** What would have to wait, what it waits for, and the way there. */
function compareReadiness(before: CourseView, after: CourseView): readonly string[] {
  const was = new Set(before.notReady.map(keyOf));
  return after.notReady.filter((entry) => !was.has(keyOf(entry))).map((entry) => entry.sentence);
}

function compareLeftOut(before: CourseView, after: CourseView): readonly string[] {
  const was = new Set(before.leftOut.map(keyOf));
  const will = new Set(after.leftOut.map(keyOf));
  const waits = new Set(after.notReady.map(keyOf));
  const fits = before.leftOut.filter((l) => !will.has(keyOf(l)));
  return [
    ...after.leftOut.filter((l) => !was.has(keyOf(l)) && !waits.has(keyOf(l))).map((l) => l.why),
    ...fits.map((l) => `“${l.title}” would find room.`),
  ];
}

/** When each unit would be done. */
function compareUnitEnds(before: CourseView, after: CourseView): readonly string[] {
  const was = unitEnds(before);
  const will = unitEnds(after);
  return after.units.flatMap((unit) => {
    const [from, to] = [was.get(unit.id), will.get(unit.id)];
    const isNew = !before.units.some((u) => u.id === unit.id);
    if (isNew && to === undefined && unit.status === 'notReady') return [];
    if (isNew)
      return [
        to === undefined
          ? `“${unit.title}” would not be finished in the lessons there are.`
          : `“${unit.title}” would be finished on ${formatDay(to)}.`,
      ];
    if (from === to) return [];
    if (to === undefined) return [`“${unit.title}” would no longer be finished.`];
    if (from === undefined) return [`“${unit.title}” would be finished on ${formatDay(to)}.`];
    return [`“${unit.title}” would be finished on ${formatDay(to)} instead of ${formatDay(from)}.`];
  });
}

function compareLessons(before: CourseView, after: CourseView): readonly string[] {
  const was = heldLessons(before).length;
  const will = heldLessons(after).length;
  if (was === will) return [];
  const more = will > was;
  return [
    `${formatCount(Math.abs(will - was), 'lesson')} ${more ? 'more' : 'fewer'}: ${will} instead of ${was}.`,
  ];
}

/** Moves that were not already waiting to be looked at. */
function compareMoves(before: CourseView, after: CourseView): readonly string[] {
  const known = new Set(before.moves.map((m) => m.sentence));
  return after.moves.map((m) => m.sentence).filter((sentence) => !known.has(sentence));
}

const lessonBars = (course: CourseView): readonly LessonBarView[] =>
  course.bars.flatMap((bar) => (bar.kind === 'lesson' ? [bar] : []));

const heldLessons = (course: CourseView) =>
  lessonBars(course).filter((l) => l.status === 'planned' || l.status === 'taught');

function lastWorkDay(course: CourseView): PlainDate | null {
  const last = heldLessons(course).findLast((l) => l.segments.some((s) => s.kind === 'work'));
  return last?.date ?? null;
}

function unitEnds(course: CourseView): ReadonlyMap<string, PlainDate> {
  const ends = new Map<string, PlainDate>();
  for (const lesson of heldLessons(course))
    for (const segment of lesson.segments)
      if (segment.endsUnit && segment.courseUnit !== null) ends.set(segment.courseUnit, lesson.date);
  return ends;
}
