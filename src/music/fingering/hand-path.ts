// The least effort through a line: one choice for each note, so that taking the notes and moving between them cost least
// together (Viterbi's dynamic programme). Sayegh, Computer Music Journal 13/3 (1989), fingers strings this way.

import { present } from '#core';

interface Step<Choice> {
  readonly choice: Choice;
  readonly cost: number;
  readonly before: Step<Choice> | null;
}

/**
 * One choice for each note, or null where a note offers none (the path then goes on over it). `own` is the cost of a
 * choice, `move` of going from one to the next. Of equal paths the one whose choices stand first is taken.
 */
export function cheapestPath<Choice>(
  choicesByNote: readonly (readonly Choice[])[],
  own: (choice: Choice) => number,
  move: (from: Choice, to: Choice) => number,
): readonly (Choice | null)[] {
  let ends: readonly Step<Choice>[] = [];
  for (const choices of choicesByNote) {
    if (choices.length === 0) continue;
    const before = ends;
    ends = choices.map((choice) => {
      let best: Step<Choice> | null = null;
      let bestCost = Number.POSITIVE_INFINITY;
      for (const end of before) {
        const cost = end.cost + move(end.choice, choice);
        if (best !== null && cost >= bestCost) continue;
        best = end;
        bestCost = cost;
      }
      return { choice, cost: own(choice) + (best === null ? 0 : bestCost), before: best };
    });
  }
  const path: (Choice | null)[] = choicesByNote.map(() => null);
  if (ends.length === 0) return path;
  let step: Step<Choice> | null = ends.reduce((a, b) => (b.cost < a.cost ? b : a));
  for (let note = path.length - 1; note >= 0; note--) {
    if (present(choicesByNote[note], 'the choices of every note').length === 0) continue;
    const here: Step<Choice> = present(step, 'a step for every note with choices');
    path[note] = here.choice;
    step = here.before;
  }
  return path;
}
