// Students, their families, groups and courses.

import type { Id, PlainDate, PlainTime } from '#core';
import type { InstrumentId } from '#music';
import type { Stage } from '#planning';
import type { StrandView } from './studio.ts';

export interface StudentsView {
  readonly students: readonly StudentRow[];
  readonly groups: readonly GroupView[];
  /** Courses that go on, by the learner's name. */
  readonly courses: readonly CourseRow[];
}

export interface CourseRow {
  readonly id: Id<'course'>;
  /** The student's name, or the group's. */
  readonly learner: string;
  /** Null for a group. */
  readonly student: Id<'student'> | null;
  readonly instrument: InstrumentId;
  readonly instrumentName: string;
  readonly stage: Stage;
  readonly revision: number;
  readonly strands: readonly Pick<StrandView, 'id' | 'name'>[];
  /** Whether it has a time in the week that still runs. */
  readonly weekly: boolean;
  /** How many units it was given. */
  readonly units: number;
  /**
   * Lessons whose practice sheets are open: the latest up to today, whose sheet is this week's, and the next; none where
   * nothing was taught of late and nothing is planned.
   */
  readonly sheets: readonly { readonly lesson: Id<'lesson'>; readonly date: PlainDate }[];
}
export interface GroupView {
  readonly id: Id<'group'>;
  readonly revision: number;
  readonly name: string;
  readonly members: readonly Id<'student'>[];
  readonly courses: readonly Id<'course'>[];
  /** The last day of the last of its courses, when all of them are over; null while one goes on, or before any was. */
  readonly ended: PlainDate | null;
}

/** Of a student's siblings one. */
export interface SiblingView {
  readonly id: Id<'student'>;
  readonly name: string;
  /** Last day, to come or past. */
  readonly left: PlainDate | null;
}

export interface ContactView {
  readonly name: string;
  readonly relation: string;
  readonly phone: string;
  readonly email: string;
}

export interface StudentRow {
  readonly id: Id<'student'>;
  readonly name: string;
  /** By name; those who left too. */
  readonly siblings: readonly SiblingView[];
  readonly age: number | null;
  readonly instruments: readonly {
    readonly instrument: InstrumentId;
    readonly name: string;
    readonly stage: Stage;
  }[];
  readonly courses: readonly Id<'course'>[];
  readonly next: { readonly lesson: Id<'lesson'>; readonly date: PlainDate; readonly time: PlainTime } | null;
  /** Last day, to come or past. */
  readonly left: PlainDate | null;
  /** Whether they are taught still: up to the last day. */
  readonly here: boolean;
  /** 100 = as usual, 120 = takes a fifth longer. */
  readonly pacePercent: number | null;
}

export interface StudentView {
  readonly id: Id<'student'>;
  readonly revision: number;
  readonly name: string;
  readonly born: PlainDate | null;
  readonly birthYear: number | null;
  readonly age: number | null;
  readonly instruments: readonly { readonly instrument: InstrumentId; readonly stage: Stage }[];
  /** Null of a student without siblings. */
  readonly family: {
    readonly id: Id<'family'>;
    readonly revision: number;
    /** What the siblings share. */
    readonly contacts: readonly ContactView[];
    /** By name; those who left too. */
    readonly siblings: readonly SiblingView[];
  } | null;
  /** The student's own; those of the family stand there. */
  readonly contacts: readonly ContactView[];
  readonly note: string;
  readonly since: PlainDate;
  readonly left: PlainDate | null;
  readonly courses: readonly {
    readonly id: Id<'course'>;
    readonly instrumentName: string;
    readonly group: string | null;
  }[];
}
