// studio: the records a studio keeps, the rules that change them, and the views that screens are drawn from.

export { previewHolidays } from './calendar/preview-holidays.ts';
export {
  type CalendarEntry,
  type CalendarUnreadable,
  type CalendarWindow,
  type ReadCalendar,
  readCalendar,
} from './calendar/read-calendar.ts';
export { applyCommand, carryOut } from './command/carry-out.ts';
export type { Outside, StarterLibrary } from './command/desk.ts';
export { coursePlanner } from './course/course-planner.ts';
export type { Planner } from './course/planner.ts';
export { eraseInCopy } from './erase/erase-in-copy.ts';
export { listKnownStudents } from './import/list-known-students.ts';
export { previewStudents } from './import/preview-students.ts';
export { type CsvRow, type CsvUnreadable, readCsv } from './import/read-csv.ts';
export type {
  ChangeId,
  ConsentRecord,
  Contact,
  CourseId,
  CourseRecord,
  CourseUnitId,
  CourseUnitRecord,
  EventId,
  EventRecord,
  FamilyId,
  FamilyRecord,
  GroupId,
  GroupRecord,
  HolidayId,
  HolidayRecord,
  LessonId,
  LessonMaterialRecord,
  LessonRecord,
  LessonStatus,
  ObservationId,
  ObservationRecord,
  SegmentId,
  SegmentOutcome,
  SegmentRecord,
  SetAsideRecord,
  SkillRecord,
  SlotId,
  SlotRecord,
  SoundDataRecord,
  SoundId,
  SoundRecord,
  Strand,
  StrandId,
  StudentId,
  StudentRecord,
  StudioRecord,
  TableName,
  Tables,
  TakeId,
  TakeRecord,
  TermId,
  TermRecord,
  UnitRecord,
  UnitVersionRecord,
} from './record/records.ts';
export type {
  ChangedRow,
  ChangeHeader,
  ChangeOutcome,
  ChangeRecord,
  JournalledChange,
  NotCompacted,
  Query,
  Reader,
  Store,
  StoreNotEmpty,
  StudioDump,
  Transactor,
} from './record/store.ts';
export { studioId } from './record/studio-id.ts';
export { loadStudentFile, type StudentFile } from './transfer/load-student-file.ts';
export { loadUnitFile } from './transfer/load-unit-file.ts';
export { previewUnits } from './transfer/preview-units.ts';
export { loadSound } from './view/load-sound.ts';
export { viewChanges } from './view/view-changes.ts';
export { viewCourse } from './view/view-course.ts';
export { viewCourseUnit } from './view/view-course-unit.ts';
export { viewDay } from './view/view-day.ts';
export { viewErasure } from './view/view-erasure.ts';
export { viewLesson } from './view/view-lesson.ts';
export { viewSkills } from './view/view-skills.ts';
export { viewStudent } from './view/view-student.ts';
export { viewStudents } from './view/view-students.ts';
export { type ViewOutside, viewStudio } from './view/view-studio.ts';
export { viewTake, viewTakes } from './view/view-takes.ts';
export { viewTerm } from './view/view-term.ts';
export { viewUnit, viewUnits } from './view/view-units.ts';
export { whatIf } from './view/what-if.ts';
