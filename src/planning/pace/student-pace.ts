// How a student's actual minutes compare with the usual ones. Log-pace is normal with a normal prior (conjugate normal
// with known variance: Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 2.5, eqs 2.11-2.12); a skill area has its
// own pace that shrinks towards the student's.

import type { Area } from '../skill/skill.ts';

/** One piece of logged work. */
export interface PaceObservation {
  readonly area: Area;
  /** Clock minutes spent. */
  readonly actual: number;
  /** What was done, in usual minutes. */
  readonly covered: number;
  /** Usual minutes of the whole activity: a part of it counts as that part of an observation. */
  readonly usual: number;
}

/** A normal belief about log(actual / usual). */
export interface LogPace {
  readonly mean: number;
  readonly sd: number;
}

export interface StudentPace extends LogPace {
  /** How many pieces of work it rests on. */
  readonly observations: number;
  /** How many of them were capped because no one can be that fast or slow: a clock left running, a slip of the finger. */
  readonly capped: number;
  readonly byArea: ReadonlyMap<Area, LogPace>;
}

/** One weighed value of log(actual / usual). */
export interface LogRatio {
  readonly value: number;
  /** 1 for a whole activity, less for a part of one. */
  readonly weight: number;
}

/** No single piece of work may say "more than three times as slow" or "three times as fast". Our own guard. */
export const mostLogRatio = Math.log(3);

/** How far an area's pace lies from the student's, as a share of how far students lie from one another. Our own choice. */
const areaShare = 0.5;

/**
 * Posterior of a normal mean, with prior N(mean, sd²) and observations of known standard deviation `within`:
 * precision 1/sd² + n/within², mean weighted by precision, n being the sum of the weights.
 *
 * `updateLogPace({ mean: 0, sd: 1 }, [{ value: 1, weight: 1 }], 1)` → `{ mean: 0.5, sd: 0.7071… }`
 */
export function updateLogPace(prior: LogPace, ratios: readonly LogRatio[], within: number): LogPace {
  let precision = 1 / (prior.sd * prior.sd);
  let weighed = prior.mean * precision;
  for (const { value, weight } of ratios) {
    precision += weight / (within * within);
    weighed += (weight * value) / (within * within);
  }
  return { mean: weighed / precision, sd: Math.sqrt(1 / precision) };
}

/** The weighed log ratio of a piece of work, or null when nothing was covered or no time was spent. */
export function logRatioOf(work: PaceObservation): (LogRatio & { readonly capped: boolean }) | null {
  if (!(work.actual > 0) || !(work.covered > 0) || !(work.usual > 0)) return null;
  const raw = Math.log(work.actual / work.covered);
  return {
    value: Math.max(-mostLogRatio, Math.min(mostLogRatio, raw)),
    weight: Math.min(1, work.covered / work.usual),
    capped: Math.abs(raw) > mostLogRatio + 1e-12,
  };
}

/** What the studio has learnt of pace over all its students: prior mean and spread of log(actual / usual). */
export interface PacePrior {
  readonly mean: number;
  /** Standard deviation τ₀ between students. */
  readonly between: number;
  /** Standard deviation σ of one observation around its student's pace. */
  readonly within: number;
}

/** Learns from one piece of work after another. */
export interface PaceLearner {
  /** Takes a piece of work into account; false when it tells nothing of pace. */
  add(work: PaceObservation): boolean;
  /** What is believed by now. */
  belief(): StudentPace;
}

/** A learner who knows nothing of the student yet. */
export function createPaceLearner(prior: PacePrior): PaceLearner {
  const all: RatioSum = { weight: 0, weighed: 0 };
  const sumByArea = new Map<Area, RatioSum>();
  let observations = 0;
  let capped = 0;
  return {
    add(work) {
      const ratio = logRatioOf(work);
      if (ratio === null) return false;
      observations++;
      if (ratio.capped) capped++;
      const ofArea = sumByArea.get(work.area) ?? { weight: 0, weighed: 0 };
      sumByArea.set(work.area, ofArea);
      for (const sum of [all, ofArea]) {
        sum.weight += ratio.weight;
        sum.weighed += ratio.weight * ratio.value;
      }
      return true;
    },
    belief() {
      const student = updateLogPace({ mean: prior.mean, sd: prior.between }, [meanOf(all)], prior.within);
      const ofArea = { mean: student.mean, sd: prior.between * areaShare };
      const byArea = new Map(
        [...sumByArea].map(([area, sum]) => [area, updateLogPace(ofArea, [meanOf(sum)], prior.within)]),
      );
      return { ...student, observations, capped, byArea };
    },
  };
}

/** Observations are known by their sum: one of their mean with the weight of all says the same. */
interface RatioSum {
  weight: number;
  weighed: number;
}

const meanOf = ({ weight, weighed }: RatioSum): LogRatio => ({
  value: weight === 0 ? 0 : weighed / weight,
  weight,
});

/** What a student's log says of their pace. */
export function learnPace(log: readonly PaceObservation[], prior: PacePrior): StudentPace {
  const learner = createPaceLearner(prior);
  for (const work of log) learner.add(work);
  return learner.belief();
}

/** Actual minutes for each usual minute that are expected in an area: the median of the belief. */
export function paceIn(pace: StudentPace, area: Area): number {
  return Math.exp(pace.byArea.get(area)?.mean ?? pace.mean);
}
