// `levare plan PROBLEM.json`: the solver alone, for anyone who wants to judge it.

import { formatProblemFault, noPartner, parseProblem, searchWith, solve } from '#planning';
import { readJsonFile } from './read-file.ts';
import { readName, readWords } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function plan(words: readonly string[]): Promise<number> {
  const read = readWords(words, {});
  if (!read.ok) return refuse('plan', read.error);
  const file = readName(read.value, 'problem file', 'levare plan PROBLEM.json');
  if (!file.ok) return refuse('plan', file.error);
  const value = await readJsonFile(file.value);
  if (!value.ok) return refuse('plan', value.error);
  const problem = parseProblem(value.value);
  if (!problem.ok) return refuse('plan', `${file.value}: ${formatProblemFault(problem.error)}`);
  // a thread would take longer to start than it saves
  searchWith(noPartner);
  const { lessons, objective } = solve(problem.value);
  console.log(JSON.stringify({ lessons, objective }));
  return 0;
}
