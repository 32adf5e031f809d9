// What a screen reader says once a take was listened to.

import { describeProblem } from '#listening';
import { words } from '../words/index.ts';
import { formatLength } from './format-figure.ts';

type Problem = Parameters<typeof describeProblem>[0];

export interface HeardInShort {
  /** How many. */
  readonly notes: number;
  readonly seconds: number;
  readonly problems: readonly Problem[];
}

/** Sentences one after the other; those of problems end by themselves. */
export const sayHeard = ({ notes, seconds, problems }: HeardInShort): string =>
  [`${words.takes.result.heard(notes, formatLength(seconds))}.`, ...problems.map(describeProblem)].join(' ');
