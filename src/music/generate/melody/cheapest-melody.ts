// Finds a melody as the cheapest way through the notes each place could have. A beam search that remembers the last two
// notes: enough for leaps that turn back, passing notes and enclosures, and the same on every machine.

import { present } from '#core';

/** What a way costs from note to note; `Infinity` forbids it. */
export interface MelodyCost<Note> {
  /** A first note. */
  readonly first: (to: Note) => number;
  /** A note after another, at its place. */
  readonly step: (to: Note, from: Note, place: number) => number;
  /** What the note before those two adds. */
  readonly turn: (to: Note, from: Note, before: Note, place: number) => number;
  /** What all the notes before add, for what does not fit into two; absent for nothing. */
  readonly trail?: (to: Note, from: Trail<Note>) => number;
}

/** A note and the one before it, back to the first. */
export interface Trail<Note> {
  readonly note: Note;
  readonly last: Trail<Note> | undefined;
}

interface Way<Note> extends Trail<Note> {
  /** Place of the note among its choices. */
  readonly index: number;
  readonly last: Way<Note> | undefined;
  readonly cost: number;
}

export interface CheapestMelody<Note> {
  readonly notes: readonly Note[];
  readonly cost: number;
}

/** The cheapest way found with this many ways kept open; null where every way is forbidden. */
export function cheapestMelody<Note>(
  places: readonly (readonly Note[])[],
  cost: MelodyCost<Note>,
  breadth: number,
): CheapestMelody<Note> | null {
  let ways: readonly Way<Note>[] = [];
  for (const [place, choices] of places.entries()) {
    const next = place === 0 ? firstWays(choices, cost) : furtherWays(ways, choices, cost, place, breadth);
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

function firstWays<Note>(choices: readonly Note[], cost: MelodyCost<Note>): Way<Note>[] {
  return choices
    .map((note, index) => ({ note, index, last: undefined, cost: cost.first(note) }))
    .filter((way) => way.cost < Number.POSITIVE_INFINITY);
}

/** Every way one note longer: for each pair of neighbours only the cheapest way to it matters from here on. */
function furtherWays<Note>(
  ways: readonly Way<Note>[],
  choices: readonly Note[],
  cost: MelodyCost<Note>,
  place: number,
  breadth: number,
): Way<Note>[] {
  const froms = 1 + ways.reduce((most, way) => Math.max(most, way.index), 0);
  const size = froms * choices.length;
  const totals = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const bestWays: (Way<Note> | undefined)[] = [];
  const steps = new Float64Array(froms);
  for (let index = 0; index < choices.length; index++) {
    const note = present(choices[index], 'a choice');
    steps.fill(Number.NaN);
    for (const way of ways) {
      let step = present(steps[way.index], 'a step');
      if (Number.isNaN(step)) {
        step = cost.step(note, way.note, place);
        steps[way.index] = step;
      }
      if (step === Number.POSITIVE_INFINITY) continue;
      const turn = way.last === undefined ? 0 : cost.turn(note, way.note, way.last.note, place);
      const total = way.cost + step + turn + (cost.trail?.(note, way) ?? 0);
      const cell = index * froms + way.index;
      if (total >= present(totals[cell], 'a cell')) continue;
      totals[cell] = total;
      bestWays[cell] = way;
    }
  }
  // Only as many as stay open are made: the cost of the last of them is the bar to pass.
  const limit =
    size > breadth ? present(totals.toSorted()[breadth - 1], 'a limit') : Number.POSITIVE_INFINITY;
  const next: Way<Note>[] = [];
  for (let cell = 0; cell < size; cell++) {
    const total = present(totals[cell], 'a cell');
    if (total > limit || total === Number.POSITIVE_INFINITY) continue;
    const index = Math.floor(cell / froms);
    next.push({ note: present(choices[index], 'a choice'), index, last: bestWays[cell], cost: total });
  }
  return next;
}
