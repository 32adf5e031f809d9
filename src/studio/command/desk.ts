// What every command works at: the open change, the clock, chance, the planner, and the courses it has in hand. A
// handler decides and saves; what a course needs after that (its revision, its plan, what moved) happens once, here.

import type { CommandOf, CommandReply, CommandType, Fault } from '#contract';
import type { Clock, PlainDate, Random, Result } from '#core';
import { ok } from '#core';
import type { Skill, UnitDocument } from '#planning';
import { type CourseRecords, loadCourse } from '../course/course-records.ts';
import type { Planner } from '../course/planner.ts';
import type { ChangeId, CourseId, CourseUnitId, LessonId } from '../record/records.ts';
import type { Transactor } from '../record/store.ts';
import { changedElsewhere, notFound } from './fault.ts';

export interface StarterLibrary {
  readonly skills: readonly Skill[];
  readonly units: readonly UnitDocument[];
}

/** What comes from outside: time, chance, the planner, and the library a new studio may start with. */
export interface Outside {
  readonly clock: Clock;
  readonly random: Random;
  readonly planner: Planner;
  readonly starter?: StarterLibrary;
}

export interface Desk {
  readonly tx: Transactor;
  readonly outside: Outside;
  readonly today: PlainDate;
  readonly change: ChangeId;
  /** What-if asks several commands one after another; there each sees what the one before did. */
  readonly imagining: boolean;
  readonly notices: string[];
  readonly inHand: Map<CourseId, CourseInHand>;
  /** Set where only a running clock was kept. */
  clockOnly: boolean;
  /** What became of a text that was written. */
  wrote: CommandReply['wrote'] | null;
}

/** A course that the command touches. `before` is as it was when the command first looked. */
export interface CourseInHand {
  readonly before: CourseRecords;
  /** As the command at work found it; null until it looks. */
  now: CourseRecords | null;
  touched: boolean;
  replan: boolean;
  /** Lessons closed, or corrected after closing, by this command. */
  readonly taught: LessonId[];
  /** Units given by this very command: that their work is new is no news. */
  readonly given: CourseUnitId[];
}

/** Decides and saves; the text is the change's label. */
export type Handler<T extends CommandType> = (
  desk: Desk,
  command: CommandOf<T>,
) => Promise<Result<string, Fault>>;

/** What a command did to a course, for the plan and for the list of what moved. */
export interface Touch {
  readonly replan?: boolean;
  readonly taught?: readonly LessonId[];
  readonly given?: readonly CourseUnitId[];
}

/** Takes a course in hand before anything of it is changed; null when there is none. */
export async function takeCourse(desk: Desk, id: CourseId): Promise<CourseRecords | null> {
  const known = desk.inHand.get(id);
  if (known !== undefined) {
    known.now ??= await loadCourse(desk.tx, id);
    return known.now;
  }
  const before = await loadCourse(desk.tx, id);
  if (before === null) return null;
  desk.inHand.set(id, {
    before,
    now: before,
    touched: false,
    replan: false,
    taught: [],
    given: [],
  });
  return before;
}

/** The next of several commands looks at each course anew. */
export function lookAnew({ inHand }: Desk): void {
  for (const course of inHand.values()) course.now = null;
}

/** As `takeCourse`, refusing when the sender had an older revision on screen. */
export async function takeSeenCourse(
  desk: Desk,
  id: CourseId,
  seen: number,
): Promise<Result<CourseRecords, Fault>> {
  const records = await takeCourse(desk, id);
  if (records === null) return notFound('course');
  if (!desk.imagining && records.course.revision !== seen)
    return changedElsewhere(desk.tx, 'course', id, `${records.learner.name}'s course`);
  return ok(records);
}

/** Notes that a course in hand was changed: its revision rises once, and it is planned again when asked. */
export function touchCourse(desk: Desk, id: CourseId, touch: Touch = { replan: true }): void {
  const course = desk.inHand.get(id);
  if (course === undefined) return;
  course.touched = true;
  course.replan ||= touch.replan ?? true;
  course.taught.push(...(touch.taught ?? []));
  course.given.push(...(touch.given ?? []));
}
