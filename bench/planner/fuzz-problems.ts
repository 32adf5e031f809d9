// Fuzz of problem files: whatever is done to one, `parseProblem` never throws, and what it accepts is planned, allowed by
// the judge, without a throw. The same count and seed give the same run.

import { createSeededRandom, type Random } from '#core';
import { parseProblem, solve } from '#planning';
import { evaluate } from '../../checks/solver/data/check-plan.mjs';
import { generateProblem, type ProblemSize } from './generate.ts';
import { mutateProblem } from './mutate-problem.ts';

export interface FuzzOutcome {
  readonly accepted: number;
  readonly refused: number;
  /** What went wrong, with the problem that did it; empty when all is well. */
  readonly failures: readonly { readonly what: string; readonly problem: string }[];
}

/** Mutates and plans `count` problems. */
export function fuzzProblems(count: number, seed: number): FuzzOutcome {
  const random = createSeededRandom(seed);
  const failures: { what: string; problem: string }[] = [];
  let accepted = 0;
  let refused = 0;
  let source = '';
  for (let n = 0; n < count && failures.length < 10; n++) {
    if (n % 50 === 0) source = JSON.stringify(generateProblem(sizeFor(n, random), seed + n));
    const mutant = mutateProblem(JSON.parse(source), random);
    const problem = JSON.stringify(mutant);
    try {
      const parsed = parseProblem(mutant);
      if (!parsed.ok) {
        refused++;
        if (parsed.error.wrong === '' || parsed.error.mend === '')
          failures.push({ what: 'a fault without words', problem });
        continue;
      }
      accepted++;
      const plan = solve(parsed.value, { steps: 8 });
      // the judge needs z, which a file may leave out
      const judged = evaluate({ ...(mutant as object), z: parsed.value.z }, plan);
      if (!judged.feasible) failures.push({ what: judged.broken.join('; '), problem });
    } catch (thrown) {
      failures.push({ what: String(thrown), problem });
    }
  }
  return { accepted, refused, failures };
}

/** Mostly tiny problems, so that a mutation costs little; now and then a big one. */
function sizeFor(n: number, random: Random): ProblemSize {
  if (n % 5000 === 0) return 'large';
  return random.next() < 0.9 ? 'tiny' : 'small';
}
