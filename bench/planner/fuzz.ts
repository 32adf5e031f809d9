// npx tsx --conditions=source bench/planner/fuzz.ts --count 100000 --seed 1

import { fuzzProblems } from './fuzz-problems.ts';

const option = (name: string, missing: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? missing : Number(process.argv[at + 1]);
};

const count = option('count', 10_000);
const seed = option('seed', 1);
const start = performance.now();
const { accepted, refused, failures } = fuzzProblems(count, seed);
for (const { what, problem } of failures) console.log(`FAILED ${what}\n${problem}`);
console.log(
  `problem files: ${accepted + refused} mutations with seed ${seed}: ${accepted} planned, ${refused} refused with a reason, ` +
    `${failures.length} failures, ${((performance.now() - start) / 1000).toFixed(1)} s`,
);
process.exitCode = failures.length > 0 ? 1 : 0;
