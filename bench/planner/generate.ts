// Realistic planning problems by seed: one student's lessons in three sizes and many regimes, so that a planner is held
// against more than the cases it was made on. Everything in them is invented.

import { addDays, chooseOne, createSeededRandom, type PlainDate, type Random, randomInteger } from '#core';
import type {
  PlanningProblem,
  ProblemActivity,
  ProblemLesson,
  ProblemReview,
  ProblemStrand,
} from '#planning';

export type ProblemSize = 'tiny' | 'small' | 'medium' | 'large';
/** The sizes of the bench; `tiny` is for what must be solved exactly in a moment. */
export const problemSizes: readonly ProblemSize[] = ['small', 'medium', 'large'];

const rangesBySize = {
  tiny: { lessons: [4, 5], activities: [4, 7], strands: [1, 2] },
  small: { lessons: [4, 6], activities: [4, 10], strands: [1, 2] },
  medium: { lessons: [8, 12], activities: [12, 30], strands: [2, 3] },
  large: { lessons: [14, 20], activities: [30, 60], strands: [3, 4] },
} as const;

/** Φ⁻¹(1 − alpha) for the values of alpha used here: NORM.S.INV of a spreadsheet, 9 digits. */
const zByAlpha: readonly (readonly [number, number])[] = [
  [0.05, 1.644853627],
  [0.1, 1.281551566],
  [0.15, 1.036433389],
  [0.2, 0.841621234],
  [0.25, 0.67448975],
  [0.3, 0.524400513],
  [0.4, 0.253347103],
];

interface Regime {
  /** Wanted ratio of core demand to the minutes there are. */
  readonly load: number;
  readonly mixedLengths: boolean;
  readonly tightWindows: boolean;
  readonly fixedChunks: boolean;
  readonly odd: boolean;
}

/** A problem of this size; the same size and seed give the same problem. */
export function generateProblem(size: ProblemSize, seed: number): PlanningProblem {
  const ranges = rangesBySize[size];
  const random = createSeededRandom(seed * 3 + problemSizes.indexOf(size) + 1);
  for (let k = 0; k < 5; k++) random.next();
  const whole = (range: readonly [number, number]): number => randomInteger(random, range[0], range[1]);
  const regime: Regime = {
    load: chooseOne(random, [0.3, 0.5, 0.7, 0.8, 0.9, 1, 1.1, 1.3, 1.8]),
    mixedLengths: chance(random, 0.2),
    tightWindows: chance(random, 0.2),
    fixedChunks: chance(random, 0.08),
    odd: chance(random, 0.2),
  };
  const [alpha, z] = chooseOne(random, regime.odd ? zByAlpha : zByAlpha.slice(1, 6));
  const age = whole([6, 60]);
  const lessons = generateLessons(random, whole(ranges.lessons), whole(ranges.strands), regime);
  const strands = generateStrands(random, whole(ranges.strands), lessons.length);
  const weights = {
    late: chooseOne(random, [0, 1, 1, 2, 3, 5]),
    solo: chooseOne(random, [0, 1, 2, 4, 8]),
    split: chooseOne(random, [0, 0.5, 1, 2, 3]),
  };
  const maxRun = chooseOne(random, regime.odd ? [1, 2, 3] : [2, 3, 3]);
  const parkGap = chooseOne(random, regime.odd ? [0, 1, 2] : [1, 2, 2]);
  const activities = generateActivities(random, {
    lessons,
    strands,
    regime,
    age,
    count: whole(ranges.activities),
  });
  return {
    id: `${size}-${seed}`,
    alpha,
    z,
    sigma: chooseOne(random, [0.2, 0.3, 0.3, 0.3, 0.4]),
    tau: chooseOne(random, [0.05, 0.1, 0.15, 0.15, 0.2]),
    maxRun,
    parkGap,
    reviewGapDays: chooseOne(random, [7, 7, 10, 14, 21]),
    weights,
    lessons: fitRecap(lessons),
    strands,
    activities,
    reviews: generateReviews(random, lessons.length, regime),
  };
}

function generateLessons(
  random: Random,
  count: number,
  strandsWanted: number,
  regime: Regime,
): readonly ProblemLesson[] {
  const length = chooseOne(random, [30, 30, 45, 45, 60]);
  const fixed = randomInteger(random, 3, length === 30 ? 6 : 9);
  const recap = chooseOne(random, [0, 2, 3, 4, 5]);
  const reviewMax = chooseOne(random, regime.odd ? [0, 3, 8] : [4, 5, 6, 8, 10]);
  const maxBlocks = length === 30 ? randomInteger(random, 3, 4) : randomInteger(random, 3, 6);
  const maxStrands = regime.odd
    ? randomInteger(random, 1, 4)
    : randomInteger(random, Math.min(2, strandsWanted), 4);
  let date = addDays('2026-09-07' as PlainDate, randomInteger(random, 0, 20));
  const lessons: ProblemLesson[] = [];
  for (let l = 0; l < count; l++) {
    const here = regime.mixedLengths ? chooseOne(random, [30, 45, 60]) : length;
    const closed = regime.odd && chance(random, 0.1);
    lessons.push({
      id: `L${l}`,
      date,
      length: here,
      fixed: closed ? here : fixed,
      recap: l === 0 || closed ? 0 : recap,
      reviewMax: closed ? 0 : reviewMax,
      maxBlocks,
      maxStrands,
    });
    date = addDays(date, chance(random, 0.12) ? 14 : 7);
  }
  return lessons;
}

/** A recap must leave the lesson possible; in these lessons at most a third of the room keeps well clear. */
function fitRecap(lessons: readonly ProblemLesson[]): readonly ProblemLesson[] {
  return lessons.map((lesson) => ({
    ...lesson,
    recap: Math.min(lesson.recap, Math.floor((lesson.length - lesson.fixed) / 3)),
  }));
}

function generateStrands(random: Random, count: number, lessonCount: number): readonly ProblemStrand[] {
  return Array.from({ length: count }, (_, s) => ({
    id: `S${s}`,
    priority: randomInteger(random, 1, 3),
    deadline: chance(random, 0.35)
      ? randomInteger(random, Math.ceil(lessonCount / 2), lessonCount - 1)
      : null,
  }));
}

interface ActivityPlan {
  readonly lessons: readonly ProblemLesson[];
  readonly strands: readonly ProblemStrand[];
  readonly regime: Regime;
  readonly age: number;
  readonly count: number;
}

function generateActivities(
  random: Random,
  { lessons, strands, regime, age, count }: ActivityPlan,
): readonly ProblemActivity[] {
  const room = lessons.reduce((sum, { length, fixed, recap }) => sum + length - fixed - recap, 0);
  const pace = Math.exp((random.next() - 0.5) * 0.8);
  const usual = Array.from(
    { length: count },
    () => chooseOne(random, [5, 6, 8, 8, 10, 10, 12, 15, 15, 20, 25, 30]) * pace,
  );
  const scale = Math.min(2.5, Math.max(0.35, (regime.load * room) / usual.reduce((sum, m) => sum + m, 0)));
  const chainFactor = chooseOne(random, [0.2, 0.5, 0.8]);
  const activities: ProblemActivity[] = [];
  usual.forEach((minutes, i) => {
    const strand = chooseOne(random, strands);
    const kind = chance(random, 0.13) ? 'ext' : 'core';
    const demand = regime.odd && chance(random, 0.04) ? 0 : Math.max(3, Math.round(minutes * scale));
    const minChunk = Math.min(demand, randomInteger(random, 3, 8));
    const byAge = Math.max(5, Math.min(20, age));
    const maxChunk = regime.fixedChunks
      ? minChunk
      : Math.max(minChunk, Math.min(demand, byAge + randomInteger(random, -2, 2)));
    const mates = activities.filter((other) => other.strand === strand.id);
    const preds = new Set<string>();
    const mate =
      mates[mates.length - 1 - randomInteger(random, 0, Math.min(1, Math.max(0, mates.length - 1)))];
    if (mate !== undefined && chance(random, chainFactor)) preds.add(mate.id);
    const stranger = activities[randomInteger(random, 0, Math.max(0, i - 1))];
    if (stranger !== undefined && chance(random, 0.1)) preds.add(stranger.id);
    const last = strand.deadline ?? lessons.length - 1;
    let window = { first: 0, last };
    if (chance(random, regime.tightWindows ? 0.5 : 0.1)) {
      const first = randomInteger(random, 0, last);
      window = { first, last: Math.min(last, first + randomInteger(random, 0, lessons.length >> 1)) };
    }
    activities.push({
      id: `A${i}`,
      strand: strand.id,
      kind,
      demand,
      minChunk,
      maxChunk,
      weight: kind === 'core' ? strand.priority * chooseOne(random, [1, 1, 1, 2, 1.5]) : 0,
      value: kind === 'ext' ? chooseOne(random, [1, 2, 3, 5, 8]) : 0,
      preds: [...preds],
      ...window,
      review: chance(random, 0.4) ? randomInteger(random, 2, 4) : 0,
      recent: chance(random, 0.15) ? [1, chance(random, 0.7) ? 1 : 0, chance(random, 0.5) ? 1 : 0] : [],
    });
  });
  return activities;
}

function generateReviews(random: Random, lessonCount: number, regime: Regime): readonly ProblemReview[] {
  const count = randomInteger(random, 0, Math.ceil(lessonCount * (regime.odd ? 1 : 0.6)));
  return Array.from({ length: count }, (_, r) => ({
    id: `R${r}`,
    minutes: randomInteger(random, 2, 5),
    due: chance(random, 0.3) ? 0 : randomInteger(random, 0, lessonCount + 1),
    weight: chooseOne(random, [1, 1, 1, 2, 3]),
  }));
}

const chance = (random: Random, share: number): boolean => random.next() < share;
