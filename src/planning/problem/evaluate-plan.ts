// The self-check: is a plan allowed, and how good is it? Definitions are those of section 2 of the planning design and
// of the project's reference judge, rule by rule and in its words.

import { overrunChance, squareLimits } from './overrun.ts';
import type { Objective, Plan, PlanningProblem, ProblemActivity, ProblemReview } from './problem.ts';
import { reviewDues } from './review-due.ts';

export type PlanRule =
  | 'FORMAT'
  | 'MIN-CHUNK'
  | 'MAX-CHUNK'
  | 'WINDOW'
  | 'PREREQUISITE'
  | 'DEMAND'
  | 'REST'
  | 'RUN'
  | 'REVIEW-ONCE'
  | 'REVIEW-EARLY'
  | 'REVIEW-TIME'
  | 'BLOCKS'
  | 'STRANDS'
  | 'OVERRUN';

export interface PlanFault {
  readonly rule: PlanRule;
  readonly detail: string;
}

export interface PlanEvaluation {
  readonly feasible: boolean;
  readonly broken: readonly PlanFault[];
  readonly objective: Objective;
  /** What P is made of: weighted lessons late, one-strand lessons, extra chunks, value of extensions missed. */
  readonly parts: {
    readonly late: number;
    readonly solo: number;
    readonly splits: number;
    readonly extMiss: number;
  };
  /** Greatest chance of overrun over the lessons. */
  readonly maxOverrun: number;
}

/** Minutes by activity and lesson, and the lesson of each revisit, read off a plan. */
interface Layout {
  readonly minutes: readonly (readonly number[])[];
  /** Lesson in which each activity is complete; Infinity when it is not. */
  readonly done: readonly number[];
  readonly reviewAt: ReadonlyMap<string, number>;
}

type Report = (rule: PlanRule, detail: string) => void;

/** Holds a plan against a problem from `parseProblem`: every rule it breaks, its objective, and what P is made of. */
export function evaluatePlan(problem: PlanningProblem, plan: Pick<Plan, 'lessons'>): PlanEvaluation {
  const broken: PlanFault[] = [];
  const report: Report = (rule, detail) => broken.push({ rule, detail });
  const layout = readLayout(problem, plan, report);
  problem.activities.forEach((activity, i) => {
    checkActivity(problem, layout, activity, i, report);
  });
  const dues = reviewDues(problem.lessons, problem.reviewGapDays);
  const reviewMinutes = checkReviews(problem, layout, dues, report);
  const { solo, maxOverrun } = checkLessons(problem, layout, reviewMinutes, report);
  const { objective, parts } = measure(problem, layout, dues, solo);
  return { feasible: broken.length === 0, broken, objective, parts, maxOverrun };
}

function readLayout(problem: PlanningProblem, plan: Pick<Plan, 'lessons'>, report: Report): Layout {
  const { activities, lessons } = problem;
  const indexById = new Map(activities.map(({ id }, i) => [id, i]));
  const minutes = activities.map(() => lessons.map(() => 0));
  const reviewAt = new Map<string, number>();
  const seen = new Set<number>();
  for (const { lesson, chunks, reviews } of plan.lessons) {
    if (!Number.isInteger(lesson) || lesson < 0 || lesson >= lessons.length || seen.has(lesson)) {
      report('FORMAT', `lesson ${lesson}`);
      continue;
    }
    seen.add(lesson);
    for (const chunk of chunks) {
      const row = minutes[indexById.get(chunk.activity) ?? -1];
      if (row === undefined) report('FORMAT', `unknown activity ${chunk.activity}`);
      else if (!Number.isInteger(chunk.minutes) || chunk.minutes <= 0)
        report('FORMAT', `minutes ${chunk.minutes} of ${chunk.activity}`);
      else if (row[lesson] !== 0) report('FORMAT', `${chunk.activity} twice in lesson ${lesson}`);
      else row[lesson] = chunk.minutes;
    }
    for (const id of reviews) {
      if (reviewAt.has(id)) report('REVIEW-ONCE', `${id} reviewed twice`);
      else reviewAt.set(id, lesson);
    }
  }
  const done = activities.map(({ demand }, i) => {
    let sum = 0;
    const at = (minutes[i] ?? []).findIndex((m) => {
      sum += m;
      return sum >= demand;
    });
    return at < 0 ? Number.POSITIVE_INFINITY : at;
  });
  return { minutes, done, reviewAt };
}

function checkActivity(
  problem: PlanningProblem,
  layout: Layout,
  activity: ProblemActivity,
  i: number,
  report: Report,
): void {
  const { id, demand, minChunk, maxChunk, first, last, preds } = activity;
  const row = layout.minutes[i] ?? [];
  let sum = 0;
  row.forEach((m, l) => {
    if (m === 0) return;
    sum += m;
    if (m < minChunk) report('MIN-CHUNK', `${id} lesson ${l} ${m} < ${minChunk}`);
    if (m > maxChunk) report('MAX-CHUNK', `${id} lesson ${l} ${m} > ${maxChunk}`);
    if (l < first || l > last) report('WINDOW', `${id} lesson ${l} outside ${first}..${last}`);
    for (const pred of preds) {
      const p = problem.activities.findIndex((other) => other.id === pred);
      if ((layout.done[p] ?? Number.POSITIVE_INFINITY) > l)
        report('PREREQUISITE', `${id} in lesson ${l} before ${pred} is complete`);
    }
  });
  if (sum > demand) report('DEMAND', `${id} ${sum} > ${demand}`);
  else if (sum < demand && demand - sum < minChunk)
    report('REST', `${id} leaves ${demand - sum} < ${minChunk}`);
  checkRun(problem, activity, row, report);
}

/** After `maxRun` lessons in a row, at least `parkGap` without the activity; `recent` stands before lesson 0. */
function checkRun(
  { maxRun, parkGap }: PlanningProblem,
  { id, recent = [] }: ProblemActivity,
  row: readonly number[],
  report: Report,
): void {
  const before = maxRun + parkGap - 1;
  const present: boolean[] = [];
  for (let h = before - 1; h >= 0; h--) present.push(recent[h] === 1);
  for (const m of row) present.push(m > 0);
  for (let t = 0; t + maxRun <= present.length; t++) {
    if (!present.slice(t, t + maxRun).every(Boolean)) continue;
    for (let at = Math.max(before, t + maxRun); at < t + maxRun + parkGap && at < present.length; at++)
      if (present[at]) report('RUN', `${id} lesson ${at - before} after ${maxRun} in a row`);
  }
}

function checkReviews(
  problem: PlanningProblem,
  layout: Layout,
  dues: readonly (number | null)[],
  report: Report,
): readonly number[] {
  const minutes = problem.lessons.map(() => 0);
  const listed = new Map<string, ProblemReview>(problem.reviews.map((review) => [review.id, review]));
  for (const [id, lesson] of layout.reviewAt) {
    const review = listed.get(id);
    const i = problem.activities.findIndex((activity) => `rev:${activity.id}` === id && activity.review > 0);
    if (review === undefined && i < 0) {
      report('FORMAT', `unknown review ${id}`);
      continue;
    }
    minutes[lesson] = (minutes[lesson] ?? 0) + (review?.minutes ?? problem.activities[i]?.review ?? 0);
    const due = review === undefined ? (dues[layout.done[i] ?? -1] ?? null) : review.due;
    if (due === null || lesson < due) report('REVIEW-EARLY', `${id} lesson ${lesson} due ${due}`);
  }
  return minutes;
}

function checkLessons(
  problem: PlanningProblem,
  layout: Layout,
  reviewMinutes: readonly number[],
  report: Report,
): { readonly solo: number; readonly maxOverrun: number } {
  let solo = 0;
  let maxOverrun = 0;
  problem.lessons.forEach((lesson, l) => {
    const revisits = reviewMinutes[l] ?? 0;
    if (revisits > lesson.reviewMax) report('REVIEW-TIME', `lesson ${l} ${revisits} > ${lesson.reviewMax}`);
    const opening = lesson.recap + revisits;
    let M = opening;
    let Q = opening * opening;
    let blocks = 0;
    const strands = new Set<string>();
    problem.activities.forEach((activity, i) => {
      const m = layout.minutes[i]?.[l] ?? 0;
      if (m === 0) return;
      M += m;
      Q += m * m;
      blocks++;
      strands.add(activity.strand);
    });
    if (blocks > lesson.maxBlocks) report('BLOCKS', `lesson ${l} ${blocks} > ${lesson.maxBlocks}`);
    if (strands.size > lesson.maxStrands)
      report('STRANDS', `lesson ${l} ${strands.size} > ${lesson.maxStrands}`);
    const C = lesson.length - lesson.fixed;
    const chance = overrunChance(M, Q, C, problem.sigma, problem.tau);
    if (M > C || Q > (squareLimits(C, problem.z, problem.sigma, problem.tau)[M] ?? -1))
      report('OVERRUN', `lesson ${l} M=${M} Q=${Q} C=${C} P=${chance.toFixed(4)} > ${problem.alpha}`);
    maxOverrun = Math.max(maxOverrun, chance);
    if (problem.strands.length > 1 && strands.size === 1) solo++;
  });
  return { solo, maxOverrun };
}

function measure(
  problem: PlanningProblem,
  layout: Layout,
  dues: readonly (number | null)[],
  solo: number,
): Pick<PlanEvaluation, 'objective' | 'parts'> {
  const end = problem.lessons.length;
  let U = 0;
  let E = 0;
  let splits = 0;
  let extMiss = 0;
  let late = 0;
  const lateness = (due: number | null, id: string): number =>
    due === null || due >= end ? 0 : (layout.reviewAt.get(id) ?? end) - due;
  for (const { id, due, weight } of problem.reviews) late += weight * lateness(due, id);
  problem.activities.forEach(({ id, kind, weight, value, demand, review }, i) => {
    let sum = 0;
    let chunks = 0;
    (layout.minutes[i] ?? []).forEach((m, l) => {
      sum += m;
      chunks += m > 0 ? 1 : 0;
      E += l * m;
    });
    const done = layout.done[i] ?? Number.POSITIVE_INFINITY;
    if (kind === 'core') U += weight * (demand - sum);
    else if (done === Number.POSITIVE_INFINITY) extMiss += value;
    splits += Math.max(0, chunks - 1);
    if (review > 0) late += lateness(dues[done] ?? null, `rev:${id}`);
  });
  const { weights } = problem;
  const P = weights.late * late + weights.solo * solo + weights.split * splits + extMiss;
  return { objective: { U, P, E }, parts: { late, solo, splits, extMiss } };
}
