import { readFileSync } from 'node:fs';
import { solve } from '#planning';
import { generateProblem } from './generate.ts';

const best = JSON.parse(readFileSync('/tmp/best.json', 'utf8'));
for (const r of JSON.parse(readFileSync(process.argv[2] ?? '/tmp/dev.json', 'utf8'))) {
  if (r.size === 'small' && !process.argv[3]) continue;
  const m = solve(generateProblem(r.size, r.seed), { steps: r.size === 'large' ? 30000 : 8000 });
  console.log(
    r.size,
    r.seed,
    JSON.stringify(r.objective),
    r.proven,
    r.seconds,
    'ours',
    JSON.stringify(m.objective),
    'best',
    JSON.stringify(best[`${r.size}-${r.seed}`]),
  );
}
