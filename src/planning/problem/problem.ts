// The planning problem: one student's next lessons in numbers only, and the plan that answers it. This is the format of
// `levare plan PROBLEM.json`; field names are the wire's, so they stay as they are.

export interface ProblemLesson {
  readonly id: string;
  /** ISO date. */
  readonly date: string;
  /** Minutes from start to end. */
  readonly length: number;
  /** Minutes taken before any work: settling in, setting practice, ongoing skills, pinned segments. */
  readonly fixed: number;
  /** Minutes of opening recap. */
  readonly recap: number;
  /** Most minutes of revisits. */
  readonly reviewMax: number;
  /** Most activities in one lesson. */
  readonly maxBlocks: number;
  /** Most strands in one lesson. */
  readonly maxStrands: number;
}

export interface ProblemStrand {
  readonly id: string;
  readonly priority: number;
  /** Lesson index by which the strand should be finished, or null. */
  readonly deadline: number | null;
}

export interface ProblemActivity {
  readonly id: string;
  readonly strand: string;
  readonly kind: 'core' | 'ext';
  /** Minutes still wanted, at this student's pace. */
  readonly demand: number;
  readonly minChunk: number;
  readonly maxChunk: number;
  /** Cost of each core minute left undone. */
  readonly weight: number;
  /** Worth of a finished extension. */
  readonly value: number;
  readonly preds: readonly string[];
  /** First and last lesson index it may stand in. */
  readonly first: number;
  readonly last: number;
  /** Minutes of the revisit that completing it brings (`rev:<id>`); 0 for none. */
  readonly review: number;
  /** `recent[0]` = was it in the lesson just before lesson 0. */
  readonly recent?: readonly (0 | 1)[];
}

export interface ProblemReview {
  readonly id: string;
  readonly minutes: number;
  /** First lesson index it may stand in; on or after the number of lessons when it falls beyond them. */
  readonly due: number;
  readonly weight: number;
}

export interface PlanningProblem {
  readonly id: string;
  /** Greatest chance of overrun in one lesson. */
  readonly alpha: number;
  /** Φ⁻¹(1 − alpha). */
  readonly z: number;
  /** Log-sd of each block's own factor, and of the factor a lesson's blocks share. */
  readonly sigma: number;
  readonly tau: number;
  /** After `maxRun` lessons in a row an activity rests `parkGap` lessons. */
  readonly maxRun: number;
  readonly parkGap: number;
  readonly reviewGapDays: number;
  readonly weights: { readonly late: number; readonly solo: number; readonly split: number };
  readonly lessons: readonly ProblemLesson[];
  readonly strands: readonly ProblemStrand[];
  readonly activities: readonly ProblemActivity[];
  readonly reviews: readonly ProblemReview[];
}

export interface PlannedChunk {
  readonly activity: string;
  readonly minutes: number;
}

export interface PlannedLesson {
  readonly lesson: number;
  readonly chunks: readonly PlannedChunk[];
  readonly reviews: readonly string[];
}

/** U: weighted core minutes left undone. P: lateness, one-strand lessons, splits, extensions missed. E: earliness. */
export interface Objective {
  readonly U: number;
  readonly P: number;
  readonly E: number;
}

export interface Plan {
  readonly lessons: readonly PlannedLesson[];
  readonly objective: Objective;
}
