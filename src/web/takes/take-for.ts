// Whose take it is, and what it is for.

import type { Id } from '#core';
import type { InstrumentId } from '#music';
import type { Level, SkillId } from '#planning';

export interface TakeFor {
  readonly student: Id<'student'>;
  readonly name: string;
  readonly course: Id<'course'> | null;
  readonly lesson: Id<'lesson'> | null;
  readonly activity: { readonly courseUnit: Id<'course-unit'>; readonly activity: string } | null;
  /** What is played, as far as it is known. */
  readonly title: string;
  readonly instrument: InstrumentId | null;
  /** Specs of the activity's materials; a backing track among them gives tempo and chords. */
  readonly materials: readonly unknown[];
  /** Skills that an observation may be made of; those of the activity, or of the whole course. */
  readonly skills: readonly {
    readonly skill: SkillId;
    readonly title: string;
    readonly wanted: Level | null;
  }[];
}
