import { parseProblem, solve } from '#planning';
import { generateProblem } from './generate.ts';

for (const [size, s] of [
  ['small', 1],
  ['small', 6],
  ['small', 7],
  ['small', 11],
] as const) {
  const p = parseProblem(generateProblem(size, s));
  if (!p.ok) continue;
  for (const steps of [5000, 20000, 100000, 500000]) {
    const t = performance.now();
    const m = solve(p.value, { steps });
    console.log(
      size,
      s,
      steps,
      JSON.stringify(m.objective),
      m.stats.rounds,
      (performance.now() - t).toFixed(0),
    );
  }
}
