// Finds a melody as the cheapest way through the notes each place could have. A beam search that remembers the last two
// notes: enough for leaps that turn back, passing notes and enclosures, and the same on every machine.

import { present } from '#core';

/** Cost of `to` after `from` after `before`; the last two are absent at the start. `Infinity` forbids it. */
export type StepCost<Note> = (
  to: Note,
  from: Note | undefined,
  before: Note | undefined,
  place: number,
) => number;

interface Way<Note> {
  readonly note: Note;
  readonly last: Way<Note> | undefined;
  readonly cost: number;
}

export interface CheapestPath<Note> {
  readonly notes: readonly Note[];
  readonly cost: number;
}

/** The cheapest way found with this many ways kept open; null where every way is forbidden. */
export function cheapestPath<Note>(
  places: readonly (readonly Note[])[],
  cost: StepCost<Note>,
  breadth: number,
): CheapestPath<Note> | null {
  let ways: readonly Way<Note>[] = [];
  for (const [place, choices] of places.entries()) {
    const next: Way<Note>[] = [];
    for (const note of choices) {
      if (place === 0) {
        const own = cost(note, undefined, undefined, 0);
        if (own < Number.POSITIVE_INFINITY) next.push({ note, last: undefined, cost: own });
        continue;
      }
      // For each pair of neighbours only the cheapest way to it matters from here on.
      const bestByFrom = new Map<Note, Way<Note>>();
      for (const way of ways) {
        const total = way.cost + cost(note, way.note, way.last?.note, place);
        if (total === Number.POSITIVE_INFINITY) continue;
        const known = bestByFrom.get(way.note);
        if (known === undefined || total < known.cost)
          bestByFrom.set(way.note, { note, last: way, cost: total });
      }
      next.push(...bestByFrom.values());
    }
    if (next.length === 0) return null;
    next.sort((a, b) => a.cost - b.cost);
    ways = next.slice(0, breadth);
  }
  const best = ways[0];
  if (best === undefined) return { notes: [], cost: 0 };
  const notes: Note[] = [];
  for (let way: Way<Note> | undefined = best; way !== undefined; way = way.last) notes.push(way.note);
  return { notes: notes.reverse(), cost: present(best, 'a way').cost };
}
