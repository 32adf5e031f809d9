// planning: units, skills, and the computing of a course from them. Knows no music and no storage.

export { type Stage, stages } from '#core';
export { changesBetween } from './course/changes-between.ts';
export type {
  CourseInput,
  CourseSettings,
  CourseUnitInput,
  LessonInput,
  LevelObservation,
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
export {
  formatCycle,
  formatDay,
  formatLeftOut,
  formatMove,
  formatNotReady,
  formatReason,
  type WordingContext,
} from './course/course-wording.ts';
export { defaultCourseSettings, defaultPacePrior } from './course/default-settings.ts';
export { type Formulation, formulateProblem } from './course/formulate-problem.ts';
export { listMoves } from './course/list-moves.ts';
export type { PlanCourseOptions } from './course/plan-anew.ts';
export { planCourse } from './course/plan-course.ts';
export {
  type LogPace,
  learnPace,
  logRatioOf,
  type PaceObservation,
  type PacePrior,
  paceIn,
  type StudentPace,
  updateLogPace,
} from './pace/student-pace.ts';
export { studioPacePrior } from './pace/studio-pace-prior.ts';
export {
  evaluatePlan,
  type PlanEvaluation,
  type PlanFault,
  type PlanRule,
} from './problem/evaluate-plan.ts';
export { normalCdf, normalQuantile, overrunChance, squareLimits } from './problem/overrun.ts';
export { parseProblem, problemLimits } from './problem/parse-problem.ts';
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
export { formatProblemFault, type ProblemFault, type ProblemFaultKind } from './problem/problem-fault.ts';
export {
  daysUntilRecall,
  dueDate,
  levelToRating,
  type MemoryCard,
  type Rating,
  recallOn,
  seeSkill,
} from './review/memory-card.ts';
export { rememberSkill, type Sighting } from './review/skill-memory.ts';
export { type Area, areas, type Level, type Skill, type SkillId } from './skill/skill.ts';
export {
  createSkillMap,
  formatSkillMapFault,
  type SkillMap,
  type SkillMapFault,
  type UnitSkills,
} from './skill/skill-map.ts';
export type { PackedModel } from './solve/pack-model.ts';
export { type KernelPlan, runKernel, type SearchOrder, scoreLength } from './solve/run-kernel.ts';
export { noPartner, type SearchPartner, searchWith } from './solve/search-partner.ts';
export { type SolvedPlan, type SolveOptions, type SolveStats, solve } from './solve/solve.ts';
export { applyVariant, type VariantFor, variantFits } from './unit/apply-variant.ts';
export { compareUnits, type UnitDifference } from './unit/compare-units.ts';
export { formatUnitDifference } from './unit/format-unit-difference.ts';
export { formatUnitFinding } from './unit/format-unit-finding.ts';
export { unitJsonSchema } from './unit/json-schema.ts';
export { parseSkillMap, parseUnitFile } from './unit/parse-unit-file.ts';
export { longestUnitText, readSkillMapText, readUnitText, type TextFormat } from './unit/read-unit-text.ts';
export {
  type Activity,
  type ActivityKey,
  type ActivityVariant,
  type AgeRange,
  type Check,
  type MaterialReference,
  type Minutes,
  type TakeHome,
  type UnitDocument,
  type UnitFile,
  type UnitId,
  waysHome,
} from './unit/unit.ts';
export { formatUnitFault, type UnitFault } from './unit/unit-fault.ts';
export { unitToMarkdown } from './unit/unit-to-markdown.ts';
export { type UnitFinding, validateUnit } from './unit/validate-unit.ts';
export { writeUnitJson, writeUnitYaml } from './unit/write-unit.ts';
