import { evaluatePlan, parseProblem, solve } from '#planning';
import { evaluate } from '/work/shared/tools/check-plan.mjs';
import { generateProblem } from './generate.ts';
import { solveWithHighs } from './solve-with-highs.ts';

const size = process.argv[2] as 'small';
for (let s = Number(process.argv[3]); s < Number(process.argv[4]); s++) {
  const g = generateProblem(size, s);
  const p = parseProblem(g);
  if (!p.ok) continue;
  const h = await solveWithHighs(p.value, Number(process.argv[5] ?? 30));
  const mine = solve(p.value);
  const j = h.plan ? evaluate(g, h.plan) : null;
  console.log(
    size,
    s,
    'highs',
    JSON.stringify(h.objective),
    h.proven.join(''),
    h.seconds.toFixed(1),
    j?.feasible ? '' : JSON.stringify(j?.broken.slice(0, 3)),
    'ours',
    JSON.stringify(mine.objective),
  );
}
