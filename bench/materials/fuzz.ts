// npx tsx --conditions=levare-source bench/materials/fuzz.ts --count 200000 --seed 1
// Random specs × instruments × stages × ages: prints what failed, how many were refused by kind and why.

import { fuzzSheets } from '../../src/music/generate/fuzz-sheets.contract.ts';

const option = (name: string, missing: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? missing : Number(process.argv[at + 1]);
};

const count = option('count', 10_000);
const seed = option('seed', 1);
const start = performance.now();
const { byKind, failures } = fuzzSheets(count, seed);
for (const failure of failures) console.log(`FAILED ${failure}`);
for (const [kind, { made, refused, reasons }] of byKind) {
  const share = ((100 * refused) / Math.max(1, made + refused)).toFixed(2);
  const why = [...reasons]
    .map(([reason, { times, example }]) => `${reason} ${times} (${example})`)
    .join(', ');
  console.log(
    `${kind.padEnd(9)} ${made} made, ${refused} refused (${share} %)${why === '' ? '' : `: ${why}`}`,
  );
}
console.log(
  `${count} cases, seeds ${seed} to ${seed + count - 1}: ${failures.length} failures, ${((performance.now() - start) / 1000).toFixed(1)} s`,
);
process.exitCode = failures.length > 0 ? 1 : 0;
