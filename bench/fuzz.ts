// A million mutations of problem files and unit files: nothing may crash, and no accepted problem may get an infeasible
// plan. npx tsx --conditions=levare-source bench/fuzz.ts [--count 1000000] [--seed 1]

import { parseArgs } from 'node:util';
import { fuzzProblems } from './planner/fuzz-problems.ts';
import { fuzzUnits } from './units/fuzz.ts';

const { values } = parseArgs({
  options: { count: { type: 'string', default: '1000000' }, seed: { type: 'string', default: '1' } },
});
const half = Math.ceil(Number(values.count) / 2);
const seed = Number(values.seed);
const started = performance.now();
console.log(`seed ${seed}, ${half} mutations of problem files`);
console.log(JSON.stringify(fuzzProblems(half, seed)));
console.log(`seed ${seed}, ${half} mutations of unit files`);
console.log(JSON.stringify(fuzzUnits({ count: half, seed })));
console.log(`${((performance.now() - started) / 1000).toFixed(0)} s`);
