// Whose take it is, and what it is for.

import type { ListenableCheckView } from '#contract';
import type { Id } from '#core';
import type { InstrumentId } from '#music';
import type { ObservableSkill } from './level-choice.tsx';

export interface TakeFor {
  readonly student: Id<'student'>;
  readonly name: string;
  readonly course: Id<'course'> | null;
  readonly lesson: Id<'lesson'> | null;
  /** The lesson whose practice it is; null where it is recorded in a lesson or apart. */
  readonly practiceOf: Id<'lesson'> | null;
  readonly activity: { readonly courseUnit: Id<'course-unit'>; readonly activity: string } | null;
  /** What is played, as far as it is known. */
  readonly title: string;
  readonly instrument: InstrumentId | null;
  /** Specs of the activity's materials; a backing track among them gives tempo and chords. */
  readonly materials: readonly unknown[];
  /** Skills that an observation may be made of; those of the activity, or of the whole course. */
  readonly skills: readonly ObservableSkill[];
  /** Checks of what is played that a take can show something of. */
  readonly checks: readonly ListenableCheckView[];
}
