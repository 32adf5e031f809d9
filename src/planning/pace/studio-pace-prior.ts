// What all of a studio's students together say about pace, as the prior for each of them: empirical Bayes by the method
// of moments (one-way analysis of variance with unequal group sizes; Searle, Casella & McCulloch, Variance Components,
// 1992, ch. 3.6).

import { defaultPacePrior } from '../course/default-settings.ts';
import { logRatioOf, type PaceObservation, type PacePrior } from './student-pace.ts';

/** Fewer than these and the defaults stay. Our own choice. */
const fewestStudents = 5;
const fewestPerStudent = 3;
const fewestInAll = 30;
/** A spread is never learnt to be nothing, nor so wide that no lesson could be filled. */
const between = { least: 0.05, most: 0.6 };
const within = { least: 0.1, most: 0.6 };

/**
 * Prior mean and spreads of log(actual / usual), from each student's log; `defaultPacePrior` while fewer than five
 * students have three pieces of work each, or thirty in all. Only activities done to at least half count: the ratio of
 * a small part says little.
 */
export function studioPacePrior(
  observationsByStudent: ReadonlyMap<string, readonly PaceObservation[]>,
): PacePrior {
  const groups: number[][] = [];
  for (const log of observationsByStudent.values()) {
    const values = log.flatMap((work) => {
      const ratio = logRatioOf(work);
      return ratio !== null && ratio.weight >= 0.5 ? [ratio.value] : [];
    });
    if (values.length >= fewestPerStudent) groups.push(values);
  }
  const count = groups.reduce((sum, g) => sum + g.length, 0);
  if (groups.length < fewestStudents || count < fewestInAll) return defaultPacePrior;

  const means = groups.map((g) => g.reduce((sum, v) => sum + v, 0) / g.length);
  const grand = groups.reduce((sum, g) => sum + g.reduce((s, v) => s + v, 0), 0) / count;
  let squaresWithin = 0;
  let squaresBetween = 0;
  let sizesSquared = 0;
  groups.forEach((g, i) => {
    const mean = means[i] ?? grand;
    for (const v of g) squaresWithin += (v - mean) ** 2;
    squaresBetween += g.length * (mean - grand) ** 2;
    sizesSquared += g.length ** 2;
  });
  const varianceWithin = squaresWithin / (count - groups.length);
  const meanSize = (count - sizesSquared / count) / (groups.length - 1);
  const varianceBetween = (squaresBetween / (groups.length - 1) - varianceWithin) / meanSize;
  return {
    mean: means.reduce((sum, m) => sum + m, 0) / means.length,
    between: bound(Math.sqrt(Math.max(0, varianceBetween)), between),
    within: bound(Math.sqrt(varianceWithin), within),
  };
}

const bound = (value: number, range: { readonly least: number; readonly most: number }) =>
  Math.min(range.most, Math.max(range.least, value));
