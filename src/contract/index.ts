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
export { idOf } from './field.ts';
export { isLessonLength, lessonLength } from './lesson-length.ts';
export { type CommandReply, type Fault, type FaultReply, toldHeader, type WrittenText } from './reply.ts';
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
  type HeardTake,
  longestTake,
  mostSoundBytes,
  mostStudioSoundBytes,
  type WrittenContext,
  waveformPoints,
} from './take.ts';
// What the screens are drawn from. Each view is one reply, complete in itself, with every sentence already made, so that the
// web shell decides nothing about planning.
export type * from './view/changes.ts';
export type * from './view/course.ts';
export type * from './view/day.ts';
export type * from './view/imports.ts';
export { studentColumns } from './view/imports.ts';
export type * from './view/lesson.ts';
export type * from './view/students.ts';
export type * from './view/studio.ts';
export type * from './view/takes.ts';
export type * from './view/term.ts';
export type * from './view/units.ts';
