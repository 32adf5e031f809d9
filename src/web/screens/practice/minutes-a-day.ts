// How long to practise a day, before a teacher says otherwise.

import type { Stage } from '#planning';

const byStage: Readonly<Record<Stage, number>> = {
  beginner: 15,
  elementary: 20,
  intermediate: 30,
  advanced: 45,
};

/** Most minutes up to an age, both included (common practice, no source: about the age and a half, in short turns). */
const mostByAge: readonly { readonly upTo: number; readonly most: number }[] = [
  { upTo: 6, most: 10 },
  { upTo: 8, most: 15 },
  { upTo: 10, most: 20 },
  { upTo: 12, most: 30 },
  { upTo: 15, most: 40 },
];

/** Minutes a day by stage, less for children; `null` for an unknown age. `suggestMinutesADay('intermediate', 9)` → 20 */
export function suggestMinutesADay(stage: Stage, age: number | null): number {
  const most = age === null ? undefined : mostByAge.find(({ upTo }) => age <= upTo)?.most;
  return Math.min(byStage[stage], most ?? Number.POSITIVE_INFINITY);
}
