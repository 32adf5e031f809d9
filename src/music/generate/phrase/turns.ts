// Whose turn a bar is. Bars to play and bars to rest go round from the first bar on, as those of the band's gate do, so
// that a sheet and a band told the same numbers change sides together (turns.test.ts holds them to each other).

import { present } from '#core';

export interface Turn {
  /** The first bar, from 0. */
  readonly bar: number;
  readonly play: number;
  /** After `play` bars; 0 where the next turn follows at once. */
  readonly rest: number;
  /** How many of the bars to play were to be rested, had this not been the last turn. */
  readonly goesOn: number;
}

/** Most bars that turns are added up to, so that the last one ends with the chart. Our own choice. */
const mostBars = 32;

export interface Turns {
  /** Bars to play and to rest; each list goes round. */
  readonly play: readonly number[];
  readonly rest: readonly number[];
  /** How many turns; with `isFixed` false more, where the chart ends later. */
  readonly rounds: number;
  readonly isFixed: boolean;
  /** How many bars the chart goes round in; null without a chart. */
  readonly chart: number | null;
}

/**
 * The turns of a study. Where the chart comes round so that some of its bars would be rested every time, its resolution
 * for one, the last turn plays on to the end.
 */
export function turnsOver({ play, rest, rounds, isFixed, chart }: Turns): readonly Turn[] {
  let count = rounds;
  if (!isFixed && chart !== null) {
    for (let more = rounds; more <= 2 * rounds; more++) {
      const bars = barsOf(plainTurns(play, rest, more));
      if (bars > Math.max(mostBars, barsOf(plainTurns(play, rest, rounds)))) break;
      if (bars % chart !== 0) continue;
      count = more;
      break;
    }
  }
  const turns = plainTurns(play, rest, count);
  const last = present(turns.at(-1), 'a study has turns');
  if (chart === null || turns.length < 2 || barsOf(turns) < chart) return turns;
  const played = new Set(
    turns.flatMap(({ bar, play: bars }) => Array.from({ length: bars }, (_, i) => (bar + i) % chart)),
  );
  const resting = Array.from({ length: last.rest }, (_, i) => (last.bar + last.play + i) % chart);
  if (resting.every((bar) => played.has(bar))) return turns;
  return [...turns.slice(0, -1), { ...last, play: last.play + last.rest, rest: 0, goesOn: last.rest }];
}

/** Bars of all turns together. */
export function barsOf(turns: readonly Turn[]): number {
  const last = present(turns.at(-1), 'a study has turns');
  return last.bar + last.play + last.rest;
}

function plainTurns(play: readonly number[], rest: readonly number[], count: number): readonly Turn[] {
  let bar = 0;
  return Array.from({ length: count }, (_, i): Turn => {
    const turn = {
      bar,
      play: present(play[i % play.length], 'bars to play'),
      rest: present(rest[i % rest.length], 'bars to rest'),
      goesOn: 0,
    };
    bar += turn.play + turn.rest;
    return turn;
  });
}
