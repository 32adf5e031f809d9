// contract: what the server and the screens both know. Commands are parsed from outside; views are plain replies.

export {
  type Command,
  type CommandOf,
  type CommandType,
  commandSchema,
  type Send,
  type Step,
  sendSchema,
  whatIfSchema,
} from './command.ts';
export { type ErasureView, type MentionView, mostOtherNames, otherNamesSchema } from './erasure.ts';
export { idOf } from './id-of.ts';
export { isLessonLength, lessonLength } from './lesson-length.ts';
export type { CommandReply, Fault, FaultReply, WrittenText } from './reply.ts';
export {
  type PreviewHolidays,
  type PreviewStudents,
  type PreviewUnits,
  previewHolidaysSchema,
  previewStudentsSchema,
  previewUnitsSchema,
  type SheetPdf,
  sheetPdfSchema,
} from './routes.ts';
export { isSamePerson, isSameReach, joinContacts, withoutShared } from './share-contacts.ts';
export { suggestPractice } from './suggest-practice.ts';
export {
  type ConsentView,
  type HeardTake,
  type ListenableCheckView,
  longestTake,
  mostSoundBytes,
  mostStudioSoundBytes,
  type TakeRow,
  type TakesView,
  type TakeView,
  type WrittenContext,
  waveformPoints,
} from './take.ts';
export {
  type BarView,
  type ChangesView,
  type ContactView,
  type CourseRow,
  type CourseUnitCompareView,
  type CourseUnitView,
  type CourseView,
  type DayLesson,
  type DayView,
  type GroupView,
  type HolidayImportPreview,
  type InkIndex,
  type KeptMaterialView,
  type LearnerView,
  type LessonBarView,
  type LessonSegmentView,
  type LessonSkillView,
  type LessonStatusView,
  type LessonView,
  type MaterialView,
  type MemberView,
  type OutcomeView,
  type SegmentView,
  type SiblingsFound,
  type SiblingView,
  type SkillMapView,
  type SkillStandingView,
  type SlotView,
  type StrandView,
  type StudentColumn,
  type StudentImportPreview,
  type StudentRow,
  type StudentsView,
  type StudentView,
  type StudioView,
  studentColumns,
  type TermView,
  type UnitImportPreview,
  type UnitRow,
  type UnitView,
  type WhatIfView,
} from './views.ts';
