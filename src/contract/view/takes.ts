// Takes, and consent to record them.

import type { Id, PlainDate } from '#core';
import type { CheckSpec, Evidence } from '#listening';
import type { InstrumentId } from '#music';
import type { Level, SkillId } from '#planning';
import type { HeardTake, WrittenContext } from '../take.ts';

export interface ConsentView {
  readonly id: Id<'consent'>;
  readonly givenBy: string;
  readonly relation: string;
  readonly on: PlainDate;
  readonly note: string;
}

/** A student's takes, newest first, and whether one may be recorded. */
export interface TakesView {
  readonly student: Id<'student'>;
  readonly name: string;
  /** Whether consent must be on record first; an age not known counts as under 18. */
  readonly isMinor: boolean;
  /** Why: under age for certain, perhaps (only the year of birth is known), or no age is known; null for an adult. */
  readonly minority: 'under' | 'perhaps' | 'unknown' | null;
  /** In years; to within a year from a year of birth alone. */
  readonly age: number | null;
  /** The consent that stands; null when there is none. */
  readonly consent: ConsentView | null;
  /** Where there is none: the day an earlier one was withdrawn. */
  readonly withdrawnOn: PlainDate | null;
  readonly takes: readonly TakeRow[];
}

export interface TakeRow {
  readonly id: Id<'take'>;
  readonly date: PlainDate;
  readonly title: string;
  readonly instrument: InstrumentId | null;
  readonly seconds: number;
  readonly notes: number;
  /** Bytes of the sound; null when only the figures were kept, or the sound was deleted. */
  readonly soundBytes: number | null;
  readonly lesson: Id<'lesson'> | null;
  /** The lesson that set the practice in which it was recorded, at home. */
  readonly practiceOf: Id<'lesson'> | null;
  readonly activity: { readonly courseUnit: Id<'course-unit'>; readonly activity: string } | null;
  /** Levels this take is the proof of. */
  readonly proves: readonly { readonly skill: SkillId; readonly title: string; readonly level: Level }[];
}

/** A check of a unit with what a take can show of it. */
export interface ListenableCheckView {
  readonly skill: SkillId;
  readonly title: string;
  readonly wanted: Level;
  readonly lookFor: string;
  readonly listenFor: readonly CheckSpec[];
}

export interface TakeView extends TakeRow {
  readonly student: Id<'student'>;
  /** Skills that the activity it was played for develops, main one first. */
  readonly develops: readonly SkillId[];
  /** Checks of what was played, or of the skills it proves, that a take can show something of. */
  readonly checks: readonly ListenableCheckView[];
  readonly note: string;
  readonly context: WrittenContext;
  readonly heard: HeardTake;
  readonly evidence: Evidence;
}
