// The studio itself, and what several screens name.

import type { Id, PlainDate, PlainTime } from '#core';
import type { InstrumentId } from '#music';
import type { CourseSettings, Stage } from '#planning';

export interface StudioView {
  /** False on the first run: show the welcome. */
  readonly founded: boolean;
  readonly revision: number;
  readonly name: string;
  readonly teacher: string;
  readonly timeZone: string;
  readonly locale: string;
  readonly noteNames: 'british' | 'american';
  readonly paper: 'A4' | 'Letter';
  readonly defaults: CourseSettings;
  readonly demo: boolean;
  readonly today: PlainDate;
  readonly now: PlainTime;
  readonly counts: {
    readonly students: number;
    readonly units: number;
    readonly terms: number;
    readonly courses: number;
  };
}

export type InkIndex = 0 | 1 | 2 | 3;

export interface StrandView {
  readonly id: Id<'strand'>;
  readonly name: string;
  readonly ink: InkIndex;
  readonly priority: number;
  readonly deadline: PlainDate | null;
}

export interface LearnerView {
  readonly student: Id<'student'> | null;
  readonly group: Id<'group'> | null;
  readonly name: string;
  /** In years; of the youngest in a group; null when unknown. */
  readonly age: number | null;
  readonly instrument: InstrumentId;
  readonly instrumentName: string;
  readonly stage: Stage;
  readonly members: readonly MemberView[];
}

/** One of a group. */
export interface MemberView {
  readonly student: Id<'student'>;
  readonly name: string;
}

export type LessonStatusView = 'planned' | 'taught' | 'missed' | 'cancelled';
export type OutcomeView = 'finished' | 'partly' | 'setAside' | 'skipped';
