import type { ListenableCheckView } from '#contract';
import type { Check } from '#planning';

/** The check where a take can show something of it, and nothing where it cannot. */
export function toListenable(check: Check, title: string): readonly ListenableCheckView[] {
  const { skill, level, lookFor, listenFor } = check;
  return listenFor === undefined ? [] : [{ skill, title, wanted: level, lookFor, listenFor }];
}
