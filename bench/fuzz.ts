// Damaged files and random wishes, many at a time: nothing may crash, nothing accepted may get a plan that is not allowed, and
// every sheet and arrangement keeps its laws.
// npx tsx --conditions=levare-source bench/fuzz.ts [--only problems|units|sheets|charts] [--count 100000] [--seed 1]

import { parseArgs } from 'node:util';
import { fuzzArrangements } from '../src/music/backing/arrangement-laws.contract.ts';
import { fuzzSheets } from '../src/music/generate/fuzz-sheets.contract.ts';
import { fuzzProblems } from './planner/fuzz-problems.ts';
import { fuzzUnits } from './units/fuzz-units.ts';

/** Each prints what it did and tells what failed. */
const parts: Readonly<Record<string, (count: number, seed: number) => readonly string[]>> = {
  problems(count, seed) {
    const { accepted, refused, failures } = fuzzProblems(count, seed);
    console.log(`  ${accepted} planned, ${refused} refused with a reason`);
    return failures.map(({ what, problem }) => `${what}\n${problem}`);
  },
  units(count, seed) {
    const { accepted, refused, failures } = fuzzUnits({ count, seed });
    console.log(`  ${accepted} accepted, ${refused} refused with a reason`);
    return failures.map(({ what, input }) => `${what}\n${input}`);
  },
  sheets(count, seed) {
    const { byKind, failures } = fuzzSheets(count, seed);
    for (const [kind, { made, refused, reasons }] of byKind) {
      const share = ((100 * refused) / Math.max(1, made + refused)).toFixed(2);
      console.log(`  ${kind.padEnd(9)} ${made} made, ${refused} refused (${share} %)`);
      for (const [reason, { times, example }] of reasons) console.log(`    ${reason} ${times} (${example})`);
    }
    return failures;
  },
  charts(count, seed) {
    const failure = fuzzArrangements(count, seed);
    return failure === null ? [] : [failure];
  },
};

const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    count: { type: 'string', default: '100000' },
    seed: { type: 'string', default: '1' },
  },
});
const [count, seed] = [Number(values.count), Number(values.seed)];
const chosen = Object.entries(parts).filter(([name]) => values.only === undefined || values.only === name);
if (chosen.length === 0) throw new Error(`--only is one of ${Object.keys(parts).join(', ')}`);
for (const [name, run] of chosen) {
  const started = performance.now();
  console.log(`${name}: ${count} with seed ${seed}`);
  const failures = run(count, seed);
  for (const failure of failures) console.log(`FAILED ${failure}`);
  console.log(`  ${failures.length} failures, ${((performance.now() - started) / 1000).toFixed(0)} s`);
  if (failures.length > 0) process.exitCode = 1;
}
