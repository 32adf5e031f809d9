// What the screens are drawn from. Each is one reply, complete in itself, with every sentence already made, so that the
// web shell decides nothing about planning.

import type { Id, PlainDate, PlainTime, Weekday } from '#core';
import type { CheckSpec } from '#listening';
import type { InstrumentId } from '#music';
import type {
  Area,
  CourseSettings,
  Level,
  SegmentKind,
  Skill,
  SkillId,
  Stage,
  TakeHome,
  UnitDocument,
  UnitId,
} from '#planning';
import type { ListenableCheckView } from './take.ts';

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

// ---- Day ----

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

// ---- Lesson ----

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
  readonly seconds: number | null;
  readonly outcome: OutcomeView | null;
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

// ---- Student and course score ----

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

// ---- Units ----

export interface UnitRow {
  readonly id: UnitId;
  readonly version: number;
  readonly title: string;
  readonly area: Area;
  readonly goal: string;
  readonly stages: readonly Stage[];
  readonly ages: { readonly from: number; readonly to: number };
  readonly usualMinutes: number;
  readonly activities: number;
  readonly usedBy: number;
  readonly retired: boolean;
}

export interface UnitView {
  readonly document: UnitDocument;
  readonly versions: readonly { readonly version: number; readonly savedAt: string }[];
  readonly usedBy: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly course: Id<'course'>;
    readonly learner: string;
    readonly version: number;
  }[];
  /** Sentences about what does not fit the skill map. */
  readonly findings: readonly string[];
  /** Units that teach what this one rests on, and units that rest on it. */
  readonly before: readonly { readonly unit: UnitId; readonly title: string }[];
  readonly after: readonly { readonly unit: UnitId; readonly title: string }[];
}

export interface SkillMapView {
  readonly skills: readonly (Skill & {
    readonly taughtBy: readonly { readonly unit: UnitId; readonly title: string }[];
  })[];
}

export interface CourseUnitCompareView {
  readonly id: Id<'course-unit'>;
  readonly course: Id<'course'>;
  readonly courseRevision: number;
  readonly learner: string;
  readonly document: UnitDocument;
  readonly library: UnitDocument | null;
  readonly differences: readonly string[];
}

// ---- Term ----

export interface TermView {
  readonly terms: readonly {
    readonly id: Id<'term'>;
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly lessons: number;
  }[];
  readonly holidays: readonly {
    readonly id: Id<'holiday'>;
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly source: string;
  }[];
  readonly week: readonly {
    readonly slot: Id<'slot'>;
    readonly course: Id<'course'>;
    readonly courseRevision: number;
    readonly learner: string;
    /** Who comes: one, or the members of a group. */
    readonly students: readonly Id<'student'>[];
    readonly instrumentName: string;
    readonly weekday: Weekday;
    readonly time: PlainTime;
    readonly minutes: number;
    readonly clash: boolean;
  }[];
}

// ---- Imports ----

export const studentColumns = [
  'name',
  'born',
  'birthYear',
  'age',
  'instrument',
  'stage',
  'family',
  'contactName',
  'contactRelation',
  'phone',
  'email',
  'note',
  'weekday',
  'time',
  'minutes',
] as const;
export type StudentColumn = (typeof studentColumns)[number];

export interface StudentImportPreview {
  readonly header: readonly string[];
  /** For each column of the file, what it is taken as, or null to leave it out. */
  readonly mapping: readonly (StudentColumn | null)[];
  readonly rows: readonly {
    /** Line in the file, counted from 1. */
    readonly line: number;
    readonly cells: readonly string[];
    readonly student: {
      readonly name: string;
      readonly born: PlainDate | null;
      readonly birthYear: number | null;
      readonly instruments: readonly { readonly instrument: InstrumentId; readonly stage: Stage }[];
      readonly contacts: readonly ContactView[];
      readonly note: string;
      readonly slot: { readonly weekday: Weekday; readonly time: PlainTime; readonly minutes: number } | null;
    } | null;
    /** What is wrong in this row and how to mend it; empty when it can be taken. */
    readonly faults: readonly { readonly column: string; readonly message: string }[];
    /** A student of this name is here already. */
    readonly twin: Id<'student'> | null;
  }[];
  /** Who may be siblings; nobody is made one unless the teacher says so. */
  readonly siblings: readonly SiblingsFound[];
}

/** Two or more who may be siblings: rows of the file, and students who are here already. */
export interface SiblingsFound {
  /** Lines in the file. */
  readonly lines: readonly number[];
  readonly here: readonly { readonly id: Id<'student'>; readonly name: string }[];
  /** The family that one of those here belongs to. */
  readonly family: Id<'family'> | null;
  /** What tells it: a column of the file, or the same surname with the same contact. */
  readonly why: 'column' | 'contact';
}

export interface HolidayImportPreview {
  readonly holidays: readonly {
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly source: string;
    readonly known: boolean;
  }[];
  readonly faults: readonly string[];
}

export interface UnitImportPreview {
  readonly units: readonly {
    readonly document: UnitDocument;
    readonly known: number | null;
    readonly findings: readonly string[];
  }[];
  readonly skills: readonly Skill[];
  readonly faults: readonly string[];
}

// ---- Changes ----

export interface ChangesView {
  readonly changes: readonly {
    readonly id: Id<'change'>;
    readonly at: string;
    readonly label: string;
    readonly type: string;
    readonly undone: boolean;
    readonly isUndo: boolean;
    /** Only a running clock was kept: nothing that a person did, and would take back by itself. */
    readonly clockOnly: boolean;
    /** What it deleted is gone for good: it cannot be taken back. */
    readonly forGood: boolean;
  }[];
}
