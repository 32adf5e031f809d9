// `levare plan PROBLEM.json`: the solver alone, for anyone who wants to judge it.

import { formatJsonFault, parseJson } from '#core';
import { formatProblemFault, parseProblem, solve } from '#planning';
import { readNamedFile } from './read-file.ts';
import { readWords } from './read-words.ts';

export async function plan(words: readonly string[]): Promise<number> {
  const read = readWords(words, {});
  const file = read.ok ? read.value.positionals[0] : undefined;
  if (!read.ok || file === undefined || read.value.positionals.length > 1) {
    console.error(`levare plan: ${read.ok ? 'name one problem file: levare plan PROBLEM.json' : read.error}`);
    return 2;
  }
  const text = await readNamedFile(file);
  if (!text.ok) {
    console.error(`levare plan: ${text.error}`);
    return 2;
  }
  const value = parseJson(text.value);
  if (!value.ok) {
    console.error(`levare plan: ${formatJsonFault(file, value.error)}`);
    return 2;
  }
  const problem = parseProblem(value.value);
  if (!problem.ok) {
    console.error(`levare plan: ${file}: ${formatProblemFault(problem.error)}`);
    return 2;
  }
  const { lessons, objective } = solve(problem.value);
  console.log(JSON.stringify({ lessons, objective }));
  return 0;
}
