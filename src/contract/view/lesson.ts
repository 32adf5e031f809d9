// One lesson, to teach from and to close.

import type { Id, PlainDate, PlainTime } from '#core';
import type { Level, SegmentKind, SkillId, TakeHome } from '#planning';
import type { LearnerView, LessonStatusView, MemberView, OutcomeView, StrandView } from './studio.ts';
import type { ListenableCheckView } from './takes.ts';

export interface LessonView {
  readonly id: Id<'lesson'>;
  readonly course: Id<'course'>;
  readonly courseRevision: number;
  readonly learner: LearnerView;
  readonly number: number;
  readonly date: PlainDate;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly status: LessonStatusView;
  readonly reason: string;
  /** Chance that its work takes longer than it lasts, 0 to 1. */
  readonly overrun: number;
  readonly note: string;
  readonly practice: string;
  /** What the teacher noted of those who learn here, of each who has a note. */
  readonly toKnow: readonly (MemberView & { readonly note: string })[];
  /** Members of a group who are not there: nothing is recorded for them here. */
  readonly absent: readonly MemberView[];
  readonly strands: readonly StrandView[];
  readonly segments: readonly LessonSegmentView[];
  readonly ongoing: readonly {
    readonly skill: SkillId;
    readonly title: string;
    readonly description: string;
  }[];
  readonly previous: {
    readonly lesson: Id<'lesson'>;
    readonly date: PlainDate;
    readonly note: string;
    readonly practice: string;
    readonly absent: readonly MemberView[];
  } | null;
  readonly next: { readonly lesson: Id<'lesson'>; readonly date: PlainDate; readonly time: PlainTime } | null;
  /** Extensions and set-aside activities that could be taken up on the spot. */
  readonly onHand: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly activity: string;
    readonly title: string;
    readonly minutes: number;
    readonly kind: 'extension' | 'setAside' | 'next';
  }[];
  /** What was kept on this lesson's practice sheet alone, in the order in which it was kept. */
  readonly kept: readonly KeptMaterialView[];
  /** Suggested practice, one line a task, made from this lesson's work. */
  readonly suggestedPractice: string;
}

/** A sheet to have ready. */
export interface MaterialView {
  readonly key: string;
  readonly title: string;
  /** The material spec it is made from, still to be parsed; null for one that is only named. */
  readonly spec: unknown;
  /** The same spec, student and seed give the same sheet. Null: the student's own. */
  readonly seed: number | null;
  /** When it stands on the practice sheet; null: whenever the activity was worked on. */
  readonly takeHome: TakeHome | null;
}

/** A sheet or a backing that stands on one lesson's practice sheet, whatever was worked on. */
export interface KeptMaterialView {
  readonly id: Id<'material'>;
  readonly title: string;
  /** As it was written, still to be parsed. */
  readonly spec: unknown;
  readonly seed: number;
}

export interface LessonSegmentView {
  readonly id: Id<'segment'>;
  readonly key: string;
  readonly kind: SegmentKind;
  readonly title: string;
  /** Minutes after the lesson's begin. */
  readonly start: number;
  readonly minutes: number;
  readonly strand: Id<'strand'> | null;
  readonly courseUnit: Id<'course-unit'> | null;
  readonly unitTitle: string;
  readonly activity: string | null;
  /** Markdown. */
  readonly howTo: string;
  readonly bring: readonly string[];
  readonly materials: readonly MaterialView[];
  readonly skills: readonly LessonSkillView[];
  readonly completes: boolean;
  readonly pinned: boolean;
  readonly reasons: readonly string[];
  /** By the clock. */
  readonly seconds: number | null;
  readonly outcome: OutcomeView | null;
  /** Usual minutes of its activity that it was worth; null before it was taught. */
  readonly covered: number | null;
  readonly note: string;
  /** What it leaves to practise, as one line; null for what leaves nothing. */
  readonly practice: string | null;
}

export interface LessonSkillView {
  readonly skill: SkillId;
  readonly title: string;
  /** Newest level, and the one recorded in this lesson if any. */
  readonly level: Level | null;
  readonly here: { readonly observation: Id<'observation'>; readonly level: Level } | null;
  readonly wanted: Level;
  readonly lookFor: readonly string[];
  /** Its checks that a take can show something of. */
  readonly listenable: readonly ListenableCheckView[];
}
