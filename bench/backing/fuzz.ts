// npx tsx --conditions=levare-source bench/backing/fuzz.ts [--count 20000] [--seed 1]
// Random charts in every feel and lesson mode, arranged and held to the laws of arrangements.

import { parseArgs } from 'node:util';
import { fuzzArrangements } from '../../src/music/backing/arrangement-laws.contract.ts';

const { values } = parseArgs({
  options: { count: { type: 'string', default: '20000' }, seed: { type: 'string', default: '1' } },
});
const [count, seed] = [Number(values.count), Number(values.seed)];
const started = performance.now();
const failure = fuzzArrangements(count, seed);
const seconds = ((performance.now() - started) / 1000).toFixed(0);
console.log(
  failure === null ? `${count} charts of seed ${seed}: no failure, ${seconds} s` : `FAILED ${failure}`,
);
process.exitCode = failure === null ? 0 : 1;
