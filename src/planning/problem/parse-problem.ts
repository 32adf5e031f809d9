// From any JSON to a planning problem, or to the one fault that has to be mended first. Strict on everything the plan
// depends on; fields that are not in the format are ignored.

import type { Fields, Result } from '#core';
import { normalCdf, normalQuantile, squareLimits } from './overrun.ts';
import { findPredCycle } from './pred-cycle.ts';
import type {
  PlanningProblem,
  ProblemActivity,
  ProblemLesson,
  ProblemReview,
  ProblemStrand,
} from './problem.ts';
import type { ProblemFault } from './problem-fault.ts';
import {
  fieldOf,
  pathTo,
  readDay,
  readList,
  readNumber,
  readOrFault,
  readRecord,
  readText,
  readWhole,
  refuse,
  show,
} from './read-field.ts';

/** The largest problem that is read: sizes beyond any student's year, small enough to be planned at once. */
export const problemLimits = {
  lessons: 60,
  activities: 200,
  strands: 20,
  reviews: 200,
  minutes: 240,
  demand: 600,
  weight: 1e6,
} as const;

const weightBounds = { low: 0, high: problemLimits.weight };
const minuteBounds = { low: 0, high: problemLimits.minutes };

/**
 * Reads a planning problem. Optional, with what stands in: `id` ("problem"), `z` (from `alpha`) or `alpha` (from `z`),
 * a strand's `priority` (1) and `deadline` (null), an activity's `recent` ([]), `value` on a core activity and `weight` on
 * an extension (0). Everything else must be there.
 * Never throws; the error names the first field at fault, in the order of the format.
 */
export function parseProblem(json: unknown): Result<PlanningProblem, ProblemFault> {
  return readOrFault(() => readProblem(readRecord(json, '')));
}

function readProblem(record: Fields): PlanningProblem {
  const id = readText(record, 'id', '', 'problem');
  const { alpha, z } = readRisk(record);
  const sigma = readNumber(record, 'sigma', '', { low: 0, high: 2 });
  const tau = readNumber(record, 'tau', '', { low: 0, high: 2 });
  const maxRun = readWhole(record, 'maxRun', '', { low: 1, high: problemLimits.lessons });
  const parkGap = readWhole(record, 'parkGap', '', { low: 0, high: problemLimits.lessons });
  const reviewGapDays = readWhole(record, 'reviewGapDays', '', { low: 0, high: 3660 });
  const weightRecord = readRecord(fieldOf(record, 'weights'), 'weights');
  const weights = {
    late: readNumber(weightRecord, 'late', 'weights', weightBounds),
    solo: readNumber(weightRecord, 'solo', 'weights', weightBounds),
    split: readNumber(weightRecord, 'split', 'weights', weightBounds),
  };
  const lessons = readLessons(record, z, sigma, tau);
  const strands = readEach(record, 'strands', problemLimits.strands, readStrand);
  refuseTwins(strands, 'strands');
  const activities = readEach(record, 'activities', problemLimits.activities, (entry, path) =>
    readActivity(entry, path, lessons.length),
  );
  refuseTwins(activities, 'activities');
  refuseStrangers(activities, strands);
  const reviews = readEach(record, 'reviews', problemLimits.reviews, readReview);
  refuseTwins(reviews, 'reviews');
  refuseBorrowedIds(reviews, activities);
  return {
    id,
    alpha,
    z,
    sigma,
    tau,
    maxRun,
    parkGap,
    reviewGapDays,
    weights,
    lessons,
    strands,
    activities,
    reviews,
  };
}

function readRisk(record: Fields): { readonly alpha: number; readonly z: number } {
  const alphaBounds = { low: 0.0001, high: 0.5 };
  const zBounds = { low: 0, high: 3.72 };
  if (fieldOf(record, 'alpha') === undefined && fieldOf(record, 'z') !== undefined) {
    const z = readNumber(record, 'z', '', zBounds);
    return { alpha: 1 - normalCdf(z), z };
  }
  const alpha = readNumber(record, 'alpha', '', alphaBounds);
  if (fieldOf(record, 'z') === undefined) return { alpha, z: Math.max(0, normalQuantile(1 - alpha)) };
  const z = readNumber(record, 'z', '', zBounds);
  if (Math.abs(normalCdf(z) - (1 - alpha)) > 0.005)
    refuse(
      'Contradiction',
      'z',
      `is ${z}, but alpha ${alpha} asks for ${normalQuantile(1 - alpha).toFixed(4)}`,
      'leave z out, or give the value that belongs to alpha',
    );
  return { alpha, z };
}

function readEach<T>(
  record: Fields,
  key: string,
  most: number,
  read: (entry: Fields, path: string) => T,
): readonly T[] {
  return readList(record, key, '', most).map((entry, at) => {
    const path = `${key}[${at}]`;
    return read(readRecord(entry, path), path);
  });
}

function readLessons(record: Fields, z: number, sigma: number, tau: number): readonly ProblemLesson[] {
  const lessons = readEach(record, 'lessons', problemLimits.lessons, readLesson);
  refuseTwins(lessons, 'lessons');
  lessons.forEach((lesson, at) => {
    const before = lessons[at - 1];
    if (before !== undefined && lesson.date < before.date)
      refuse(
        'OutOfOrder',
        `lessons[${at}].date`,
        `is ${lesson.date}, before lessons[${at - 1}] on ${before.date}`,
        'put the lessons in the order of their dates',
      );
    const room = lesson.length - lesson.fixed;
    const limit = lesson.recap > room ? -1 : (squareLimits(room, z, sigma, tau)[lesson.recap] ?? -1);
    if (lesson.recap * lesson.recap > limit)
      refuse(
        'CannotFit',
        `lessons[${at}].recap`,
        `takes ${lesson.recap} of the ${room} minutes left after fixed, more than the wanted chance of overrun allows`,
        'shorten recap or fixed, or lengthen the lesson',
      );
  });
  return lessons;
}

function readLesson(entry: Fields, path: string): ProblemLesson {
  const id = readText(entry, 'id', path);
  const date = readDay(entry, 'date', path);
  const length = readWhole(entry, 'length', path, minuteBounds);
  const fixed = readWhole(entry, 'fixed', path, minuteBounds);
  if (fixed > length)
    refuse(
      'Contradiction',
      pathTo(path, 'fixed'),
      `is ${fixed}, more than the lesson's length of ${length}`,
      'give at most the length',
    );
  const recap = readWhole(entry, 'recap', path, minuteBounds);
  const reviewMax = readWhole(entry, 'reviewMax', path, minuteBounds);
  const maxBlocks = readWhole(entry, 'maxBlocks', path, { low: 0, high: problemLimits.activities });
  const maxStrands = readWhole(entry, 'maxStrands', path, { low: 0, high: problemLimits.activities });
  return { id, date, length, fixed, recap, reviewMax, maxBlocks, maxStrands };
}

function readStrand(entry: Fields, path: string): ProblemStrand {
  const id = readText(entry, 'id', path);
  const priority = readNumber(entry, 'priority', path, { ...weightBounds, missing: 1 });
  const written = fieldOf(entry, 'deadline');
  const deadline =
    written === undefined || written === null
      ? null
      : readWhole(entry, 'deadline', path, { low: 0, high: 10_000 });
  return { id, priority, deadline };
}

function readActivity(entry: Fields, path: string, lessonCount: number): ProblemActivity {
  const id = readText(entry, 'id', path);
  const strand = readText(entry, 'strand', path);
  const kind = fieldOf(entry, 'kind');
  if (kind !== 'core' && kind !== 'ext')
    return refuse(
      kind === undefined ? 'MissingField' : 'WrongType',
      pathTo(path, 'kind'),
      `is ${show(kind)}`,
      'write "core" or "ext"',
    );
  const demand = readWhole(entry, 'demand', path, { low: 0, high: problemLimits.demand });
  const minChunk = readWhole(entry, 'minChunk', path, { low: 0, high: problemLimits.demand });
  const maxChunk = readWhole(entry, 'maxChunk', path, { low: 0, high: problemLimits.demand });
  if (minChunk > maxChunk)
    refuse(
      'Contradiction',
      pathTo(path, 'minChunk'),
      `is ${minChunk}, more than maxChunk ${maxChunk}`,
      'give at most maxChunk',
    );
  if (demand > 0 && minChunk > demand)
    refuse(
      'CannotFit',
      pathTo(path, 'minChunk'),
      `is ${minChunk}, more than the whole demand of ${demand}, so no plan could take it up or leave it`,
      'give at most the demand',
    );
  const weight = readNumber(
    entry,
    'weight',
    path,
    kind === 'ext' ? { ...weightBounds, missing: 0 } : weightBounds,
  );
  const value = readNumber(
    entry,
    'value',
    path,
    kind === 'core' ? { ...weightBounds, missing: 0 } : weightBounds,
  );
  const preds = readPreds(entry, path);
  const first = readWhole(entry, 'first', path, { low: 0, high: 10_000 });
  const last = readWhole(entry, 'last', path, { low: 0, high: 10_000 });
  // with no lessons at all, any window is as good as none
  if (first > last && lessonCount > 0)
    refuse(
      'Contradiction',
      pathTo(path, 'first'),
      `is ${first}, after last ${last}`,
      'give first at most last',
    );
  const review = readWhole(entry, 'review', path, minuteBounds);
  return {
    id,
    strand,
    kind,
    demand,
    minChunk,
    maxChunk,
    weight,
    value,
    preds,
    first,
    last,
    review,
    recent: readRecent(entry, path),
  };
}

function readPreds(entry: Fields, path: string): readonly string[] {
  const preds = readList(entry, 'preds', path, problemLimits.activities);
  return preds.map((pred, at) =>
    typeof pred === 'string'
      ? pred
      : refuse('WrongType', `${path}.preds[${at}]`, `is ${show(pred)}`, 'give the id of an activity'),
  );
}

function readRecent(entry: Fields, path: string): readonly (0 | 1)[] {
  if (fieldOf(entry, 'recent') === undefined) return [];
  return readList(entry, 'recent', path, 1000).map((mark, at) =>
    mark === 0 || mark === 1
      ? mark
      : refuse('WrongType', `${path}.recent[${at}]`, `is ${show(mark)}`, 'write 1 (was in that lesson) or 0'),
  );
}

function readReview(entry: Fields, path: string): ProblemReview {
  return {
    id: readText(entry, 'id', path),
    minutes: readWhole(entry, 'minutes', path, minuteBounds),
    due: readWhole(entry, 'due', path, { low: 0, high: 10_000 }),
    weight: readNumber(entry, 'weight', path, weightBounds),
  };
}

function refuseTwins(entries: readonly { readonly id: string }[], key: string): void {
  const seen = new Map<string, number>();
  entries.forEach(({ id }, at) => {
    const before = seen.get(id);
    if (before !== undefined)
      refuse(
        'DuplicateId',
        `${key}[${at}].id`,
        `is ${show(id)}, already the id of ${key}[${before}]`,
        'give each its own id',
      );
    seen.set(id, at);
  });
}

function refuseStrangers(activities: readonly ProblemActivity[], strands: readonly ProblemStrand[]): void {
  const strandIds = new Set(strands.map(({ id }) => id));
  const activityIds = new Set(activities.map(({ id }) => id));
  activities.forEach(({ id, strand, preds }, at) => {
    if (!strandIds.has(strand))
      refuse(
        'UnknownId',
        `activities[${at}].strand`,
        `is ${show(strand)}, which no strand has as its id`,
        'name one of strands',
      );
    preds.forEach((pred, k) => {
      if (!activityIds.has(pred))
        refuse(
          'UnknownId',
          `activities[${at}].preds[${k}]`,
          `is ${show(pred)}, which no activity has as its id`,
          'name an activity of this problem, or leave it out if it is done',
        );
      if (pred === id)
        refuse('Cycle', `activities[${at}].preds[${k}]`, 'names the activity itself', 'leave it out');
    });
  });
  const cycle = findPredCycle(activities);
  if (cycle !== null)
    refuse(
      'Cycle',
      `activities[${activities.findIndex(({ id }) => id === cycle[0])}].preds`,
      `go round in a circle: ${cycle.map(show).join(' rests on ')} rests on ${show(cycle[0])}`,
      'take one of these out',
    );
}

function refuseBorrowedIds(reviews: readonly ProblemReview[], activities: readonly ProblemActivity[]): void {
  const coming = new Set(activities.filter(({ review }) => review > 0).map(({ id }) => `rev:${id}`));
  reviews.forEach(({ id }, at) => {
    if (coming.has(id))
      refuse(
        'DuplicateId',
        `reviews[${at}].id`,
        `is ${show(id)}, the revisit that completing that activity will bring`,
        'give it another id',
      );
  });
}
