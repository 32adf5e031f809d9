// A computed course: timed segments in each coming lesson, why each stands there, what could not be placed, and what
// moved since the plan before.

import type { PlainDate } from '#core';
import type { Level, SkillId } from '../skill/skill.ts';
import type { ActivityKey, UnitId } from '../unit/unit.ts';
import type { LevelObservation, TaughtLesson } from './course-input.ts';

/** `open` is time for which nothing is planned: a barred lesson, or a course that has run out of work. */
export type SegmentKind = 'settlingIn' | 'recap' | 'revisit' | 'work' | 'extension' | 'open' | 'practice';

/** Why a segment stands where it stands; `formatReason` makes the sentence. */
export type Reason =
  | {
      readonly kind: 'restsOn';
      readonly activity: ActivityKey;
      readonly courseUnit: string;
      readonly title: string;
    }
  | { readonly kind: 'nextInOrder' }
  /** This chunk ends at minute `upTo` of `of`. */
  | { readonly kind: 'split'; readonly minutes: number; readonly upTo: number; readonly of: number }
  /** Recall is 0..1. */
  | { readonly kind: 'due'; readonly recall: number; readonly lastSeen: PlainDate | null }
  | { readonly kind: 'neededNext'; readonly skill: SkillId; readonly title: string; readonly by: string }
  /** Back after resting. */
  | { readonly kind: 'rested'; readonly lessons: number }
  | { readonly kind: 'backFromAside'; readonly since: PlainDate }
  | { readonly kind: 'knownAlready'; readonly level: Level }
  | { readonly kind: 'pace'; readonly percent: number; readonly observations: number }
  | { readonly kind: 'pinned' }
  | { readonly kind: 'variant'; readonly title: string }
  | { readonly kind: 'readyEarly' }
  | { readonly kind: 'deadline'; readonly date: PlainDate };

export interface PlannedSegment {
  /**
   * The same piece of work keeps its key from plan to plan: `work:<course unit>:<activity>:<nth>`, where the nth chunk
   * is counted from the first time that the activity was ever taught; `revisit:<skill>:<nth from now>`;
   * `settlingIn:<lesson>`, `recap:<lesson>`, `open:<lesson>`, `practice:<lesson>`.
   */
  readonly key: string;
  readonly kind: SegmentKind;
  readonly strand: string | null;
  readonly courseUnit: string | null;
  readonly activity: ActivityKey | null;
  /** The skill of a revisit. */
  readonly skill: SkillId | null;
  readonly title: string;
  /** Minutes after the lesson's start. */
  readonly start: number;
  /** Minutes on the clock; together they fill the lesson exactly. */
  readonly minutes: number;
  /** Minutes of the plan: `minutes` for work and revisits, at most `minutes` for the frame, which takes up what is spare. */
  readonly planned: number;
  /** Whether the activity is complete when this segment ends; its checks follow then. */
  readonly completes: boolean;
  readonly pinned: boolean;
  readonly reasons: readonly Reason[];
}

export interface LessonPlan {
  readonly lesson: string;
  readonly date: PlainDate;
  readonly segments: readonly PlannedSegment[];
  /** Chance, 0..1, that this lesson's work takes longer than there is. */
  readonly overrun: number;
  /** Skills reinforced throughout. */
  readonly ongoing: readonly SkillId[];
}

/** Skills that rest on one another in a ring, or activities that do because each develops several skills. */
export type OrderCycle =
  | { readonly kind: 'SkillCycle'; readonly skills: readonly SkillId[] }
  | {
      readonly kind: 'ActivityCycle';
      readonly activities: readonly {
        readonly courseUnit: string;
        readonly activity: ActivityKey;
        readonly title: string;
      }[];
    };

/** An activity whose skills rest on some that no one has taught this student; `way` lists library units, nearest first. */
export interface NotReady {
  readonly courseUnit: string;
  readonly activity: ActivityKey;
  readonly title: string;
  readonly missing: readonly SkillId[];
  readonly way: readonly UnitId[];
}

export interface LeftOut {
  readonly courseUnit: string;
  readonly activity: ActivityKey;
  readonly title: string;
  readonly minutes: number;
  readonly why:
    | { readonly kind: 'noRoom' }
    | { readonly kind: 'noRoomBefore'; readonly date: PlainDate }
    | { readonly kind: 'notReady' }
    | { readonly kind: 'setAside' }
    | { readonly kind: 'afterLeftOut'; readonly title: string };
}

/** What happened since the plan before; from it comes the cause of each move. */
export interface MoveContext {
  /** Ids of lessons cancelled or missed since. */
  readonly gone: readonly string[];
  /** Lessons taught since, with the work logged in them. */
  readonly taught: readonly TaughtLesson[];
  /** Levels recorded since. */
  readonly observed: readonly LevelObservation[];
  /**
   * Activities and skills that the teacher pinned, let go, set aside, took back, added, changed or removed since; and
   * lessons kept free, opened, lengthened or shortened.
   */
  readonly byHand: readonly (
    | { readonly courseUnit: string; readonly activity: ActivityKey }
    | { readonly skill: SkillId }
    | { readonly lesson: string }
  )[];
}

/** One difference from the plan before. Dates are null where it was not, or no longer is, planned. */
export interface Move {
  readonly key: string;
  readonly title: string;
  readonly from: { readonly date: PlainDate; readonly minutes: number } | null;
  readonly to: { readonly date: PlainDate; readonly minutes: number } | null;
  readonly because:
    | { readonly kind: 'lessonGone'; readonly date: PlainDate }
    | { readonly kind: 'notReached' }
    | { readonly kind: 'fasterThanPlanned' }
    | { readonly kind: 'slowerThanPlanned' }
    | { readonly kind: 'paceLearnt' }
    | { readonly kind: 'knownAlready' }
    | { readonly kind: 'due' }
    /** It rests on an activity that moved later itself. */
    | { readonly kind: 'restsOnMoved'; readonly title: string }
    | { readonly kind: 'madeRoom' }
    | { readonly kind: 'byHand' };
}

export interface CoursePlan {
  readonly lessons: readonly LessonPlan[];
  readonly notReady: readonly NotReady[];
  readonly leftOut: readonly LeftOut[];
  /** Rings among prerequisites; the plan goes on with the listed order where it meets one. */
  readonly cycles: readonly OrderCycle[];
  /** Posterior of the student's log pace. */
  readonly pace: { readonly mean: number; readonly sd: number; readonly observations: number };
  /** A fingerprint of the problem that was solved: equal fingerprints, equal plans. */
  readonly fingerprint: string;
  readonly objective: { readonly U: number; readonly P: number; readonly E: number };
}
