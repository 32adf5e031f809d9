// The pace that a plan reckons with. What a log says of a pace can swing on its first few entries; a plan that followed
// every swing would change each lesson of a term because one short activity went quickly. So it follows in small steps.

import type { Area } from '../skill/skill.ts';
import { createPaceLearner, type PaceObservation, type PacePrior } from './student-pace.ts';

/** Steps of pace in one unit: 5 % each. Our own choice. */
const stepsInOne = 20;

/**
 * Actual minutes for each usual minute, by skill area. For each piece of work logged it goes one step of 5 % towards the
 * belief, and only while the belief is further away than its own standard deviation. `log` stands in the order in which
 * the work was done.
 *
 * A student who takes half as long again is reckoned at 1.05 after one piece of work, at 1.35 after eight.
 */
export function reckonPace(log: readonly PaceObservation[], prior: PacePrior): (area: Area) => number {
  const learner = createPaceLearner(prior);
  const beliefs = log.flatMap((work) => (learner.add(work) ? [learner.belief()] : []));
  const start = Math.max(1, Math.round(Math.exp(prior.mean) * stepsInOne));
  const paceByArea = new Map<Area, number>();
  return (area) => {
    const known = paceByArea.get(area);
    if (known !== undefined) return known;
    let steps = start;
    for (const belief of beliefs) {
      const { mean, sd } = belief.byArea.get(area) ?? belief;
      const away = mean - Math.log(steps / stepsInOne);
      if (Math.abs(away) > sd) steps = Math.max(1, steps + Math.sign(away));
    }
    paceByArea.set(area, steps / stepsInOne);
    return steps / stepsInOne;
  };
}
