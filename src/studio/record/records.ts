// What the studio keeps: one record type per table, joined by id. Nested values (contacts, strands, documents) are
// stored as JSON text. Records are plain data; rules live beside them.

import type { HeardTake, WrittenContext } from '#contract';
import type { Id, PlainDate, PlainTime, Weekday } from '#core';
import type { Evidence } from '#listening';
import type { InstrumentId } from '#music';
import type {
  ActivityKey,
  Area,
  CoursePlan,
  CourseSettings,
  Level,
  Move,
  PacePrior,
  Reason,
  SegmentKind,
  SkillId,
  Stage,
  UnitDocument,
  UnitId,
} from '#planning';

export type StudentId = Id<'student'>;
export type FamilyId = Id<'family'>;
export type GroupId = Id<'group'>;
export type CourseId = Id<'course'>;
export type CourseUnitId = Id<'course-unit'>;
export type StrandId = Id<'strand'>;
export type TermId = Id<'term'>;
export type HolidayId = Id<'holiday'>;
export type SlotId = Id<'slot'>;
export type EventId = Id<'event'>;
export type LessonId = Id<'lesson'>;
export type SegmentId = Id<'segment'>;
export type ObservationId = Id<'observation'>;
export type TakeId = Id<'take'>;
export type SoundId = Id<'sound'>;
export type ChangeId = Id<'change'>;

/** What the studio's log says of pace, as of a day. */
export interface StudioPace {
  readonly prior: PacePrior;
  readonly asOf: PlainDate;
}

/** The one row that says whose studio this is. Its id is always `studio:own`. */
export interface StudioRecord {
  readonly id: Id<'studio'>;
  readonly revision: number;
  readonly name: string;
  readonly teacher: string;
  /** IANA zone, `Europe/Lisbon`. */
  readonly timeZone: string;
  /** BCP 47 tag, `en-GB`. */
  readonly locale: string;
  readonly noteNames: 'british' | 'american';
  readonly paper: 'A4' | 'Letter';
  /** Starting values for new courses. */
  readonly defaults: CourseSettings;
  /** Null until a first lesson is closed. */
  readonly pace: StudioPace | null;
  readonly demo: boolean;
}

export interface Contact {
  readonly name: string;
  /** "mother", "self", "grandfather". */
  readonly relation: string;
  readonly phone: string;
  readonly email: string;
}

export interface FamilyRecord {
  readonly id: FamilyId;
  readonly revision: number;
  readonly name: string;
  readonly contacts: readonly Contact[];
  readonly note: string;
}

export interface StudentRecord {
  readonly id: StudentId;
  readonly revision: number;
  readonly name: string;
  /** The full date when known, else the year alone, else neither. */
  readonly born: PlainDate | null;
  readonly birthYear: number | null;
  readonly instruments: readonly { readonly instrument: InstrumentId; readonly stage: Stage }[];
  readonly family: FamilyId | null;
  readonly contacts: readonly Contact[];
  readonly note: string;
  readonly since: PlainDate;
  /** The day they left, or null. */
  readonly left: PlainDate | null;
}

export interface GroupRecord {
  readonly id: GroupId;
  readonly revision: number;
  readonly name: string;
  readonly members: readonly StudentId[];
}

export interface Strand {
  readonly id: StrandId;
  readonly name: string;
  /** One of four inks, each with its own texture. */
  readonly ink: 0 | 1 | 2 | 3;
  /** 1 is the most important. */
  readonly priority: number;
  /** The event or day it works towards. */
  readonly deadline: PlainDate | null;
}

/** What is kept of the last plan beside its segments, so that the next one can tell what changed. */
export type PlanFacts = Pick<CoursePlan, 'fingerprint' | 'pace' | 'leftOut'>;

/** One student's or group's course. `revision` counts every change to it, its units, lessons and segments. */
export interface CourseRecord {
  readonly id: CourseId;
  readonly revision: number;
  readonly student: StudentId | null;
  readonly group: GroupId | null;
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  readonly strands: readonly Strand[];
  readonly settings: CourseSettings;
  /** What moved at the last replanning, until looked at. */
  readonly moved: readonly Move[];
  /** Null before the first planning. */
  readonly plan: PlanFacts | null;
  readonly ended: PlainDate | null;
}

/** A unit on a course. `document` is this student's own copy, from the library's version `unitVersion`. */
export interface CourseUnitRecord {
  readonly id: CourseUnitId;
  readonly course: CourseId;
  readonly unit: UnitId;
  readonly unitVersion: number;
  readonly document: UnitDocument;
  readonly strand: StrandId;
  /** Order within its strand. */
  readonly position: number;
  readonly notBefore: PlainDate | null;
  readonly notAfter: PlainDate | null;
}

/** The library's newest copy of a unit; earlier versions are kept in `unitVersion`. */
export interface UnitRecord {
  readonly id: UnitId;
  readonly version: number;
  readonly title: string;
  readonly area: Area;
  readonly document: UnitDocument;
  readonly retired: boolean;
}

export interface UnitVersionRecord {
  /** `<unit id>-v<version>` under the prefix `unit-version:`. */
  readonly id: Id<'unit-version'>;
  readonly unit: UnitId;
  readonly version: number;
  readonly document: UnitDocument;
  readonly savedAt: string;
}

export interface SkillRecord {
  readonly id: SkillId;
  readonly title: string;
  readonly area: Area;
  readonly stage: Stage;
  readonly description: string;
  readonly restsOn: readonly SkillId[];
  readonly ongoing: boolean;
}

export interface TermRecord {
  readonly id: TermId;
  readonly name: string;
  readonly starts: PlainDate;
  /** Last day, included. */
  readonly ends: PlainDate;
}

export interface HolidayRecord {
  readonly id: HolidayId;
  readonly name: string;
  readonly starts: PlainDate;
  /** Last day, included. */
  readonly ends: PlainDate;
  /** UID of the calendar event it came from, or ''. */
  readonly source: string;
}

/** A weekly appointment. Lessons are made from it for each term. */
export interface SlotRecord {
  readonly id: SlotId;
  readonly course: CourseId;
  readonly weekday: Weekday;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly starts: PlainDate;
  readonly ends: PlainDate | null;
}

/** A recital, exam or other day that a course works towards. */
export interface EventRecord {
  readonly id: EventId;
  readonly course: CourseId;
  readonly date: PlainDate;
  readonly title: string;
}

export type LessonStatus = 'planned' | 'taught' | 'missed' | 'cancelled';

export interface LessonRecord {
  readonly id: LessonId;
  readonly course: CourseId;
  readonly date: PlainDate;
  readonly time: PlainTime;
  readonly minutes: number;
  readonly status: LessonStatus;
  /** Why it was cancelled or missed, or ''. */
  readonly reason: string;
  /** The slot and the day it was made for; null for an extra lesson. Keeps a moved lesson from being made twice. */
  readonly slot: SlotId | null;
  readonly slotDate: PlainDate | null;
  /** Kept free of planned work. */
  readonly barred: boolean;
  /** Teacher's own note, and the practice set. */
  readonly note: string;
  readonly practice: string;
  /** Chance of overrun of the plan as it stands, 0..1. */
  readonly overrun: number;
  readonly ongoing: readonly SkillId[];
  /** Members of a group who were, or will be, not there; null where all are, and for a student alone. */
  readonly absent: readonly StudentId[] | null;
}

export interface SegmentRecord {
  readonly id: SegmentId;
  readonly lesson: LessonId;
  readonly course: CourseId;
  readonly position: number;
  readonly key: string;
  readonly kind: SegmentKind;
  readonly strand: StrandId | null;
  readonly courseUnit: CourseUnitId | null;
  readonly activity: ActivityKey | null;
  readonly skill: SkillId | null;
  readonly title: string;
  /** Minutes after the lesson's start. */
  readonly start: number;
  readonly minutes: number;
  readonly completes: boolean;
  readonly pinned: boolean;
  readonly reasons: readonly Reason[];
  /** The log: seconds on the clock, usual minutes covered, what came of it. Null until there is something. */
  readonly seconds: number | null;
  readonly covered: number | null;
  readonly outcome: SegmentOutcome | null;
  readonly note: string;
}

/** finished: understood, move on · partly: carry on next time · setAside: come back later · skipped: not reached. */
export type SegmentOutcome = 'finished' | 'partly' | 'setAside' | 'skipped';

export interface ObservationRecord {
  readonly id: ObservationId;
  readonly course: CourseId;
  /** Null when it speaks of a whole group. */
  readonly student: StudentId | null;
  readonly lesson: LessonId | null;
  readonly skill: SkillId;
  readonly level: Level;
  readonly date: PlainDate;
  /** The instant it was noted, which orders levels of one day; null in records kept before there was one. */
  readonly notedAt: string | null;
  readonly note: string;
  /** The take that shows it. */
  readonly take: TakeId | null;
}

/** A sheet or a backing kept on one lesson's practice sheet, beside those that its activities bring. */
export interface LessonMaterialRecord {
  readonly id: Id<'material'>;
  readonly lesson: LessonId;
  readonly course: CourseId;
  /** When it was kept, ISO instant: the order on the sheet. */
  readonly keptAt: string;
  readonly title: string;
  /** A material or backing spec as it was written, which `music` reads. */
  readonly spec: Readonly<Record<string, unknown>>;
  /** The same spec, student and seed give the same sheet. */
  readonly seed: number;
}

/** Consent to record a student and keep the takes. */
export interface ConsentRecord {
  readonly id: Id<'consent'>;
  readonly student: StudentId;
  readonly givenBy: string;
  /** "mother", "self". */
  readonly relation: string;
  readonly givenOn: PlainDate;
  readonly note: string;
  readonly withdrawnOn: PlainDate | null;
}

/** One recording of a student: what was heard in it, and the sound where it was kept. */
export interface TakeRecord {
  readonly id: TakeId;
  readonly student: StudentId;
  readonly date: PlainDate;
  /** When it was kept, ISO instant: the order of takes of one day. */
  readonly keptAt: string;
  /** What was played. */
  readonly title: string;
  /** Where and for what it was played; both may be gone by now, the take stays. */
  readonly takenIn: LessonId | null;
  /** The lesson that set the practice in which it was recorded. */
  readonly practiceOf: LessonId | null;
  readonly playedFor: { readonly courseUnit: CourseUnitId; readonly activity: ActivityKey } | null;
  readonly instrument: InstrumentId | null;
  readonly context: WrittenContext;
  readonly heard: HeardTake;
  readonly evidence: Evidence;
  readonly note: string;
  readonly sound: SoundId | null;
}

/**
 * A sound that is kept. Its row and its bytes are never journalled, so that deleting a sound deletes it: no undo and no list
 * of changes holds a second copy.
 */
export interface SoundRecord {
  readonly id: SoundId;
  /** Media type. */
  readonly type: string;
  readonly bytes: number;
  /** Since when no take holds it; it is deleted some days later. Null while one does. */
  readonly unheldSince: PlainDate | null;
}

/** The bytes of a sound, apart, so that sounds can be counted without being read. */
export interface SoundDataRecord {
  readonly id: Id<'sound-data'>;
  readonly sound: SoundId;
  /** Base64. */
  readonly data: string;
}

/** An activity set aside on a course, until `backFrom` (null: until the teacher takes it up again). */
export interface SetAsideRecord {
  readonly id: Id<'set-aside'>;
  readonly course: CourseId;
  readonly courseUnit: CourseUnitId;
  readonly activity: ActivityKey;
  readonly since: PlainDate;
  readonly backFrom: PlainDate | null;
}

/** Every table by name. The store reads and writes these and no others. */
export interface Tables {
  readonly studio: StudioRecord;
  readonly family: FamilyRecord;
  readonly student: StudentRecord;
  readonly group: GroupRecord;
  readonly course: CourseRecord;
  readonly courseUnit: CourseUnitRecord;
  readonly unit: UnitRecord;
  readonly unitVersion: UnitVersionRecord;
  readonly skill: SkillRecord;
  readonly term: TermRecord;
  readonly holiday: HolidayRecord;
  readonly slot: SlotRecord;
  readonly event: EventRecord;
  readonly lesson: LessonRecord;
  readonly segment: SegmentRecord;
  readonly lessonMaterial: LessonMaterialRecord;
  readonly observation: ObservationRecord;
  readonly setAside: SetAsideRecord;
  readonly consent: ConsentRecord;
  readonly sound: SoundRecord;
  readonly soundData: SoundDataRecord;
  readonly take: TakeRecord;
}
export type TableName = keyof Tables;
