// Which of the first three steps comes next.

import type { StudioView } from '#contract';

export type FirstStep = 'term' | 'students' | 'unit';

/** Term dates first, since courses are laid on them; then students; then a unit. */
export function findNextStep(counts: Pick<StudioView['counts'], 'terms' | 'students'>): FirstStep {
  if (counts.terms === 0) return 'term';
  return counts.students === 0 ? 'students' : 'unit';
}
