// Which losses are kept for a while: annealing with a heat for each level of the objective.

import { newReals, real, setReal } from './memory.ts';
import { activityCount, lateWeight, soloWeight, splitWeight, weightOf } from './model.ts';
import { draw } from './random.ts';
import { firstDifference } from './score.ts';
import {
  earlinessAtP,
  earlinessAtU,
  heatE,
  heatOfPAtE,
  heatOfUAtE,
  heatOfUAtP,
  heatP,
  heatU,
  squareWorth,
} from './tuning.ts';

/** A loss is kept when it is below heat × luck: U, P, E, moves. */
export let heats: i32 = 0;
let starting: i32 = 0;

/** Heats at the start, each counted at its own level: a few minutes, about one weight of P, a few units of E. */
export function createHeats(): void {
  heats = newReals(4);
  starting = newReals(4);
  let weight: f64 = Infinity;
  for (let i = 0; i < activityCount; i++) if (real(weightOf, i) > 0) weight = min(weight, real(weightOf, i));
  setReal(starting, 0, weight === Infinity ? 0 : heatU * weight);
  setReal(starting, 1, heatP * max(lateWeight, max(soloWeight, splitWeight)));
  setReal(starting, 2, heatE);
}

/** Sets the heats of now; `cooling` falls from 1 to 0 over a level. */
export function coolHeats(level: i32, cooling: f64): void {
  const squared = cooling * cooling;
  for (let k = 0; k < 4; k++) setReal(heats, k, k === level ? real(starting, k) * squared : 0);
  // work may change places with other work of the same worth, a few minutes at a time
  if (level === 1) setReal(heats, 0, heatOfUAtP * real(starting, 0) * squared);
  else if (level === 2) setReal(heats, 0, heatOfUAtE * real(starting, 0) * squared);
  // before E counts, early plans rather than scattered ones keep what room there is in one piece
  if (level < 2) setReal(heats, 2, (level === 0 ? earlinessAtU : earlinessAtP) * (0.1 + cooling));
  else if (level === 2) setReal(heats, 1, heatOfPAtE * real(starting, 1) * squared);
}

/** How much of its heat a loss may be this time; drawn from a number in [0, 1) as annealing has it. */
export function luckFrom(number: f64): f64 {
  return -Math.log(1 - number);
}

/** Whether a loss, of P or E, is kept with luck. */
export function isWorth(loss: f64, counts: i32): bool {
  if (loss <= 0) return true;
  const heat = real(heats, counts);
  return heat > 0 && loss < heat * luckFrom(draw());
}

/** Whether a changed plan is kept: with losses at the level, and hardly before it, with luck. */
export function isKept(candidate: i32, current: i32, level: i32, luck: f64): bool {
  const at = firstDifference(candidate, current);
  if (at > level && level >= 2) return true;
  const counts = at > level ? 2 : at;
  let loss = real(candidate, counts) - real(current, counts);
  if (at > level && level === 0) loss += squareWorth * (real(candidate, 4) - real(current, 4));
  return loss <= 0 || loss < real(heats, counts) * luck;
}
