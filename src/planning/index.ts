// planning: units, skills, and the computing of a course from them. Knows no music and no storage.

export type {
  CourseInput,
  CourseSettings,
  CourseUnitInput,
  LessonInput,
  LevelObservation,
  PacePrior,
  Pin,
  SetAside,
  StrandInput,
  TaughtLesson,
  Work,
} from './course/course-input.ts';
export type {
  CoursePlan,
  LeftOut,
  LessonPlan,
  Move,
  MoveContext,
  NotReady,
  OrderCycle,
  PlannedSegment,
  Reason,
  SegmentKind,
} from './course/course-plan.ts';
export { defaultCourseSettings, defaultPacePrior } from './course/default-settings.ts';
export type {
  Objective,
  Plan,
  PlannedChunk,
  PlannedLesson,
  PlanningProblem,
  ProblemActivity,
  ProblemLesson,
  ProblemReview,
  ProblemStrand,
} from './problem/problem.ts';
export { type Area, areas, type Level, type Skill, type SkillId, type Stage, stages } from './skill/skill.ts';
export type {
  Activity,
  ActivityKey,
  ActivityVariant,
  AgeRange,
  Check,
  MaterialReference,
  Minutes,
  UnitDocument,
  UnitFile,
  UnitId,
} from './unit/unit.ts';
