// The harmony a reading line implies, a chord for each bar: tonic, something on the way, dominant, tonic; a question ends
// on the dominant (common practice, no source).

import { chooseOne, modulo, type Random } from '#core';
import type { PlannedBar } from '../rhythm/compose-rhythm.ts';

/** Root of a chord as a degree of the key, 0 the tonic and 4 the dominant. */
export type HarmonyRoot = 0 | 1 | 3 | 4 | 5;

/** One root for each bar. */
export function planHarmony(random: Random, plan: readonly PlannedBar[]): readonly HarmonyRoot[] {
  return plan.map((bar, i): HarmonyRoot => {
    if (bar.close === 'full') return 0;
    if (bar.close === 'half') return 4;
    const isFirst = i === 0 || plan[i - 1]?.close === 'half';
    if (isFirst) return 0;
    const next = plan[i + 1];
    if (next?.close === 'full') return 4;
    if (next === undefined) return 0;
    if (next.close === 'half') return chooseOne(random, [0, 1, 3, 5] as const);
    return chooseOne(random, [3, 4, 0, 5] as const);
  });
}

/** Whether a degree of the key belongs to the chord on a root; the dominant has its seventh. */
export function isChordDegree(root: HarmonyRoot, degree: number): boolean {
  const above = modulo(degree - root, 7);
  return above === 0 || above === 2 || above === 4 || (root === 4 && above === 6);
}
