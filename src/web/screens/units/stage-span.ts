import { type Stage, stages } from '#planning';
import { words } from '../../words/index.ts';

/** Stages in words: neighbours as a span. `['beginner', 'elementary']` → `Beginner to elementary` */
export function stageSpan(given: readonly Stage[]): string {
  const at = stages.flatMap((stage, place) => (given.includes(stage) ? [place] : []));
  const [first, last] = [stages[at[0] ?? -1], stages[at.at(-1) ?? -1]];
  if (first === undefined || last === undefined) return '';
  const isSpan = (at.at(-1) ?? 0) - (at[0] ?? 0) === at.length - 1;
  if (isSpan) return words.units.stageSpan(words.stageNames[first], words.stageNames[last]);
  return stages
    .filter((stage) => given.includes(stage))
    .map((stage, place) => (place === 0 ? words.stageNames[stage] : words.stageNames[stage].toLowerCase()))
    .join(', ');
}
