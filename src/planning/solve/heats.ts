// Which losses are kept for a while: annealing with a heat for each level of the objective.

import type { Model } from './model.ts';
import { firstDifference, type Score } from './score.ts';
import { tuning } from './tuning.ts';

/** A loss is kept when it is below heat × luck: U, P, E, moves. */
export type Heats = Float64Array;

/** Heats at the start, each counted at its own level: a few minutes, about one weight of P, a few units of E. */
export function startingHeats(model: Model): Heats {
  let weight = Number.POSITIVE_INFINITY;
  for (const w of model.weight) if (w > 0) weight = Math.min(weight, w);
  const unit = Math.max(model.lateWeight, model.soloWeight, model.splitWeight);
  return Float64Array.from([
    weight === Number.POSITIVE_INFINITY ? 0 : tuning.heatU * weight,
    unit * tuning.heatP,
    tuning.heatE,
    0,
  ]);
}

/** Writes the heats of now into `heats`; `cooling` falls from 1 to 0 over a level. */
export function coolHeats(heats: Heats, start: Heats, level: number, cooling: number): void {
  const squared = cooling * cooling;
  for (let k = 0; k < 4; k++) heats[k] = k === level ? (start[k] ?? 0) * squared : 0;
  // work may change places with other work of the same worth, a few minutes at a time
  if (level === 1) heats[0] = tuning.heatOfUAtP * (start[0] ?? 0) * squared;
  else if (level === 2) heats[0] = tuning.heatOfUAtE * (start[0] ?? 0) * squared;
  // before E counts, early plans rather than scattered ones keep what room there is in one piece
  if (level < 2) heats[2] = (level === 0 ? tuning.earlinessAtU : tuning.earlinessAtP) * (0.1 + cooling);
  else if (level === 2) heats[1] = tuning.heatOfPAtE * (start[1] ?? 0) * squared;
}

/** How much of its heat a loss may be this time; drawn from a number in [0, 1) as annealing has it. */
export const luckFrom = (draw: number): number => -Math.log(1 - draw);

/** Whether a changed plan is kept: with losses at the level, and hardly before it, with luck. */
export function isKept(candidate: Score, current: Score, level: number, heats: Heats, luck: number): boolean {
  const at = firstDifference(candidate, current);
  if (at > level && level >= 2) return true;
  const counts = at > level ? 2 : at;
  const loss = (candidate[counts] ?? 0) - (current[counts] ?? 0);
  return loss <= 0 || loss < (heats[counts] ?? 0) * luck;
}
