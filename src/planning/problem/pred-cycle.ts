import type { ProblemActivity } from './problem.ts';

/** The ids of activities that rest on each other in a circle, each on the next; null when there is no such circle. */
export function findPredCycle(activities: readonly ProblemActivity[]): readonly string[] | null {
  const predsOf = new Map(activities.map(({ id, preds }) => [id, preds]));
  const settled = new Set<string>();
  for (const { id: start } of activities) {
    // depth first without recursion: a chain of any length is read
    const trail: { readonly id: string; next: number }[] = [{ id: start, next: 0 }];
    const onTrail = new Set([start]);
    while (!settled.has(start)) {
      const here = trail[trail.length - 1];
      if (here === undefined) break;
      const pred = (predsOf.get(here.id) ?? [])[here.next];
      here.next += 1;
      if (pred === undefined) {
        settled.add(here.id);
        onTrail.delete(here.id);
        trail.pop();
      } else if (onTrail.has(pred)) {
        return trail.slice(trail.findIndex(({ id }) => id === pred)).map(({ id }) => id);
      } else if (!settled.has(pred)) {
        trail.push({ id: pred, next: 0 });
        onTrail.add(pred);
      }
    }
  }
  return null;
}
