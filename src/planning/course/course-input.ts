// Everything that planning needs to know of one course, as plain data: the student, the strands and their units, the
// lessons still to come, and what was done and observed so far. `studio` assembles it from the store.

import type { PlainDate, Stage } from '#core';
import type { PacePrior } from '../pace/student-pace.ts';
import type { Level, Skill, SkillId } from '../skill/skill.ts';
import type { ActivityKey, UnitDocument } from '../unit/unit.ts';

/** One unit on a course: the student's own copy of the document, on a strand, in order. */
export interface CourseUnitInput {
  readonly id: string;
  readonly strand: string;
  readonly document: UnitDocument;
  /** Days before and after which none of it may stand, or null. */
  readonly notBefore: PlainDate | null;
  readonly notAfter: PlainDate | null;
}

export interface StrandInput {
  readonly id: string;
  readonly name: string;
  /** 1 is the most important. Sets the cost of minutes left undone. */
  readonly priority: number;
  /** The day of the recital or exam it works towards, or null. */
  readonly deadline: PlainDate | null;
}

/** A lesson that will be taught: not cancelled, not missed, today or later. */
export interface LessonInput {
  readonly id: string;
  readonly date: PlainDate;
  readonly minutes: number;
  /** Kept free of planned work by the teacher. */
  readonly barred: boolean;
}

/** What happened to one activity in one taught lesson. */
export interface Work {
  readonly courseUnit: string;
  readonly activity: ActivityKey;
  /** Clock minutes spent. */
  readonly actual: number;
  /** How much of the activity that was worth, in usual minutes; actual / covered is the pace. */
  readonly covered: number;
  readonly outcome: 'partly' | 'finished' | 'setAside';
}

export interface TaughtLesson {
  readonly id: string;
  readonly date: PlainDate;
  readonly minutes: number;
  readonly work: readonly Work[];
  /** Skills revisited, whether or not a level was recorded. */
  readonly revisited: readonly SkillId[];
}

/** One level recorded on one day. The latest says where a skill stands; all of them feed the memory model. */
export interface LevelObservation {
  readonly skill: SkillId;
  readonly date: PlainDate;
  readonly level: Level;
}

/** A segment that the teacher fixed by hand: this many minutes of this activity, or this revisit, in this lesson. */
export type Pin =
  | {
      readonly kind: 'activity';
      readonly lesson: string;
      readonly courseUnit: string;
      readonly activity: ActivityKey;
      readonly minutes: number;
    }
  | { readonly kind: 'revisit'; readonly lesson: string; readonly skill: SkillId; readonly minutes: number };

/** An activity stopped before more work on it stops paying; it returns on or after `backFrom`, or not at all (null). */
export interface SetAside {
  readonly courseUnit: string;
  readonly activity: ActivityKey;
  readonly since: PlainDate;
  readonly backFrom: PlainDate | null;
}

export interface CourseSettings {
  /** Greatest chance of overrun, default 0.2. */
  readonly overrun: number;
  /** Wanted recall, default 0.85. */
  readonly retention: number;
  readonly maxRun: number;
  readonly parkGap: number;
  /** Minutes. */
  readonly settlingIn: number;
  readonly settingPractice: number;
  readonly recap: number;
  readonly revisit: number;
  readonly mostBlocks: number;
  readonly mostStrands: number;
}

export interface CourseInput {
  readonly course: string;
  readonly today: PlainDate;
  /** Age in years, of the youngest in a group; null when unknown (planned as an adult). */
  readonly age: number | null;
  readonly stage: Stage;
  readonly skills: readonly Skill[];
  /** The library, for the shortest way to what is missing. */
  readonly library: readonly UnitDocument[];
  readonly strands: readonly StrandInput[];
  /** In the order wanted within each strand. */
  readonly units: readonly CourseUnitInput[];
  /** In date order, all on or after `today`. */
  readonly lessons: readonly LessonInput[];
  /** In date order. */
  readonly taught: readonly TaughtLesson[];
  readonly observations: readonly LevelObservation[];
  readonly pins: readonly Pin[];
  readonly setAside: readonly SetAside[];
  readonly pacePrior: PacePrior;
  readonly settings: CourseSettings;
}
