// A day's lessons.

import type { Id, PlainDate, PlainTime } from '#core';
import type { SegmentKind } from '#planning';
import type { InkIndex, LearnerView, LessonStatusView, MemberView } from './studio.ts';

export interface DayView {
  readonly date: PlainDate;
  readonly holiday: string | null;
  readonly lessons: readonly DayLesson[];
  /** Things to print, bring or set up, once each, with the lessons that want them. */
  readonly setUp: readonly { readonly item: string; readonly lessons: readonly Id<'lesson'>[] }[];
  /** The nearest days before and after with lessons. */
  readonly before: PlainDate | null;
  readonly after: PlainDate | null;
}

export interface DayLesson {
  readonly id: Id<'lesson'>;
  readonly course: Id<'course'>;
  readonly learner: LearnerView;
  readonly number: number;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly status: LessonStatusView;
  readonly reason: string;
  readonly segments: readonly {
    readonly kind: SegmentKind;
    readonly title: string;
    readonly minutes: number;
    readonly ink: InkIndex | null;
  }[];
  /** Chance that its work takes longer than it lasts, 0 to 1. */
  readonly overrun: number;
  /** Sentences that want a decision: "Not closed yet", "Plan moved: look at what changed". */
  readonly decisions: readonly string[];
  /** It is to be taught and may hold work, but the course has no new work for it: another unit is wanted. */
  readonly wantsUnit: boolean;
  readonly lastNote: string;
  /** Members of a group who are not there, and who were not there last time. */
  readonly absent: readonly MemberView[];
  readonly lastAbsent: readonly MemberView[];
}
