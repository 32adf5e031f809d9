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
  /** Place of the note among its choices. */
  readonly index: number;
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
    const next = place === 0 ? firstWays(choices, cost) : furtherWays(ways, choices, cost, place);
    if (next.length === 0) return null;
    next.sort((a, b) => a.cost - b.cost);
    if (next.length > breadth) next.length = breadth;
    ways = next;
  }
  const best = ways[0];
  if (best === undefined) return { notes: [], cost: 0 };
  const notes: Note[] = [];
  for (let way: Way<Note> | undefined = best; way !== undefined; way = way.last) notes.push(way.note);
  return { notes: notes.reverse(), cost: best.cost };
}

function firstWays<Note>(choices: readonly Note[], cost: StepCost<Note>): Way<Note>[] {
  return choices
    .map((note, index) => ({ note, index, last: undefined, cost: cost(note, undefined, undefined, 0) }))
    .filter((way) => way.cost < Number.POSITIVE_INFINITY);
}

/** Every way one note longer: for each pair of neighbours only the cheapest way to it matters from here on. */
function furtherWays<Note>(
  ways: readonly Way<Note>[],
  choices: readonly Note[],
  cost: StepCost<Note>,
  place: number,
): Way<Note>[] {
  const next: Way<Note>[] = [];
  const froms = Math.max(0, ...ways.map((way) => way.index)) + 1;
  const lowest = new Float64Array(froms);
  const bestWays: (Way<Note> | undefined)[] = [];
  for (let index = 0; index < choices.length; index++) {
    const note = present(choices[index], 'a choice');
    lowest.fill(Number.POSITIVE_INFINITY);
    for (const way of ways) {
      const total = way.cost + cost(note, way.note, way.last?.note, place);
      if (total >= (lowest[way.index] ?? Number.NEGATIVE_INFINITY)) continue;
      lowest[way.index] = total;
      bestWays[way.index] = way;
    }
    for (let from = 0; from < froms; from++) {
      const total = present(lowest[from], 'a cost');
      if (total < Number.POSITIVE_INFINITY) next.push({ note, index, last: bestWays[from], cost: total });
    }
  }
  return next;
}
