// A course as its score, and what a what-if would make of it.

import type { Id, PlainDate, PlainTime, Weekday } from '#core';
import type { CheckSpec } from '#listening';
import type { Area, CourseSettings, Level, SegmentKind, SkillId, UnitId } from '#planning';
import type { LearnerView, LessonStatusView, MemberView, OutcomeView, StrandView } from './studio.ts';

export interface CourseView {
  readonly id: Id<'course'>;
  readonly revision: number;
  readonly learner: LearnerView;
  readonly strands: readonly StrandView[];
  readonly settings: CourseSettings;
  readonly ended: PlainDate | null;
  readonly today: PlainDate;
  readonly slots: readonly SlotView[];
  readonly events: readonly { readonly id: Id<'event'>; readonly date: PlainDate; readonly title: string }[];
  /** In date order: lessons of all kinds and stretches of holiday. */
  readonly bars: readonly BarView[];
  readonly units: readonly CourseUnitView[];
  readonly leftOut: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly activity: string;
    readonly title: string;
    readonly why: string;
  }[];
  readonly notReady: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly activity: string;
    readonly sentence: string;
    /** What it rests on and the student does not have. */
    readonly missing: readonly { readonly skill: SkillId; readonly title: string }[];
    readonly way: readonly { readonly unit: UnitId; readonly title: string }[];
  }[];
  readonly setAside: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly activity: string;
    readonly title: string;
    readonly since: PlainDate;
    readonly backFrom: PlainDate | null;
  }[];
  /** What moved at the last replanning, until looked at. */
  readonly moves: readonly {
    readonly key: string;
    readonly sentence: string;
    readonly from: PlainDate | null;
    readonly to: PlainDate | null;
  }[];
  readonly skills: readonly SkillStandingView[];
  /** 100 = as usual, 120 = takes a fifth longer; low and high bound 80 % of it. */
  readonly pace: {
    readonly percent: number;
    readonly low: number;
    readonly high: number;
    readonly observations: number;
  };
  readonly attendance: { readonly taught: number; readonly missed: number; readonly cancelled: number };
}

export interface SlotView {
  readonly id: Id<'slot'>;
  readonly weekday: Weekday;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly starts: PlainDate;
  readonly ends: PlainDate | null;
}

export type BarView =
  | { readonly kind: 'rest'; readonly from: PlainDate; readonly to: PlainDate; readonly name: string }
  | LessonBarView;

export interface LessonBarView {
  readonly kind: 'lesson';
  readonly lesson: Id<'lesson'>;
  /** Counts the course's lessons that were or will be given, from 1; null when cancelled or missed. */
  readonly number: number | null;
  readonly date: PlainDate;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly status: LessonStatusView;
  readonly reason: string;
  readonly barred: boolean;
  /** Members of a group who were not there. */
  readonly absent: readonly MemberView[];
  /** Chance that its work takes longer than it lasts, 0 to 1. */
  readonly overrun: number;
  readonly segments: readonly SegmentView[];
}

export interface SegmentView {
  readonly id: Id<'segment'>;
  readonly key: string;
  readonly kind: SegmentKind;
  readonly strand: Id<'strand'> | null;
  readonly courseUnit: Id<'course-unit'> | null;
  readonly activity: string | null;
  readonly skill: SkillId | null;
  readonly title: string;
  /** Minutes after the lesson's begin. */
  readonly start: number;
  readonly minutes: number;
  readonly completes: boolean;
  /** The last segment of its unit: the check stands here. */
  readonly endsUnit: boolean;
  readonly pinned: boolean;
  readonly outcome: OutcomeView | null;
  readonly actualMinutes: number | null;
  readonly reasons: readonly string[];
  readonly moved: boolean;
}

export interface CourseUnitView {
  readonly id: Id<'course-unit'>;
  readonly unit: UnitId;
  readonly title: string;
  readonly area: Area;
  readonly goal: string;
  readonly strand: Id<'strand'>;
  readonly position: number;
  readonly notBefore: PlainDate | null;
  readonly notAfter: PlainDate | null;
  readonly version: number;
  readonly libraryVersion: number | null;
  /** The student's copy differs from the version it came from. */
  readonly adapted: boolean;
  readonly status: 'planned' | 'begun' | 'done' | 'notReady';
  /** Of the core work, 0..1. */
  readonly share: number;
  readonly activities: readonly {
    readonly activity: string;
    readonly title: string;
    readonly share: number;
    readonly setAside: boolean;
  }[];
  readonly checks: readonly {
    readonly skill: SkillId;
    readonly title: string;
    readonly wanted: Level;
    readonly level: Level | null;
    readonly lookFor: string;
    /** What a take can show of it. */
    readonly listenFor: readonly CheckSpec[];
  }[];
}

export interface SkillStandingView {
  readonly skill: SkillId;
  readonly title: string;
  readonly area: Area;
  readonly ongoing: boolean;
  readonly level: Level | null;
  readonly history: readonly {
    readonly observation: Id<'observation'>;
    /** The lesson it was noted in; null outside of any. */
    readonly lesson: Id<'lesson'> | null;
    readonly date: PlainDate;
    readonly level: Level;
    readonly note: string;
    /** The take that shows it. */
    readonly take: Id<'take'> | null;
  }[];
  /** Predicted recall today, 0..1, and the day it falls below the wanted retention; null before anything was learnt. */
  readonly recall: number | null;
  readonly due: PlainDate | null;
}

/** What a what-if would do, with nothing saved. */
export interface WhatIfView {
  readonly course: CourseView;
  /** Sentences, most important first. */
  readonly changes: readonly string[];
  readonly ends: { readonly before: PlainDate | null; readonly after: PlainDate | null };
}
