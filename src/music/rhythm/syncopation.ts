// How syncopated a rhythm is. Source: Longuet-Higgins & Lee 1984, The Rhythmic Interpretation of Monophonic Music, Music
// Perception 1(4) 424-441; rule and figures as in the shared reference table of rhythm (see checks/theory).

import { assert, present } from '#core';
import type { Metre } from './metre.ts';

/**
 * Weights of the smallest steps of a bar that divides by these numbers, outermost first: 0 on the first, one less for
 * every level down. `metricWeights([2, 2])` → 0 -2 -1 -2
 */
export function metricWeights(divisions: readonly number[]): readonly number[] {
  let weights = [0];
  divisions.forEach((parts, level) => {
    weights = weights.flatMap((weight) => [weight, ...Array.from({ length: parts - 1 }, () => -level - 1)]);
  });
  return weights;
}

/** How a regular metre divides down to `steps` in the bar; null where it does not, as in irregular metres. */
export function metreDivisions(metre: Metre, steps: number): readonly number[] | null {
  const { groups, unit, beats } = metre;
  const isCompound = groups.every((group) => group === 3);
  if (new Set(groups).size !== 1) return null;
  const inBeat = isCompound ? 3 : 1;
  const count = beats / inBeat;
  if (unit >= 8 && !isCompound) return null;
  const divisions = count === 4 ? [2, 2] : count === 1 ? [] : count <= 3 ? [count] : null;
  if (divisions === null) return null;
  const all = isCompound ? [...divisions, 3] : [...divisions];
  let made = all.reduce((product, parts) => product * parts, 1);
  for (; made < steps; made *= 2) all.push(2);
  return made === steps ? all : null;
}

/**
 * The strength of each note that is held or followed by silence over at least one step, null where it is not syncopated:
 * the heaviest step it covers, less the weight of its own, where that is not negative. `gaps` are the steps from each
 * note to the next; they repeat from the bar's start. `syncopationByNote([1, 3], [2, 2])` → [1]
 */
export function syncopationByNote(
  gaps: readonly number[],
  divisions: readonly number[],
): readonly (number | null)[] {
  const weights = metricWeights(divisions);
  const strengths: (number | null)[] = [];
  let at = 0;
  for (const gap of gaps) {
    assert(Number.isInteger(gap) && gap > 0, `no gap between notes: ${gap}`);
    const weightAt = (step: number) => present(weights[step % weights.length], 'a weight for every step');
    const covered = Array.from({ length: gap - 1 }, (_, i) => weightAt(at + 1 + i));
    const strength = Math.max(...covered) - weightAt(at);
    if (gap > 1) strengths.push(strength >= 0 ? strength : null);
    at += gap;
  }
  return strengths;
}

/** The sum over all notes; 0 for a rhythm that leans on its beats. Son clave in semiquavers → 4 */
export function syncopation(gaps: readonly number[], divisions: readonly number[]): number {
  return syncopationByNote(gaps, divisions).reduce<number>((sum, strength) => sum + (strength ?? 0), 0);
}
