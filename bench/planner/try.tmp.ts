import { evaluatePlan, parseProblem, solve } from '#planning';
import { generateProblem, problemSizes } from '/work/main/bench/planner/generate.ts';
import { evaluate } from '/work/shared/tools/check-plan.mjs';

const N = Number(process.argv[2] ?? 20);
for (const size of problemSizes) {
  const times: number[] = [];
  let bad = 0,
    rounds = 0;
  let faults = 0;
  for (let s = 0; s < N; s++) {
    const g = generateProblem(size, s);
    const p = parseProblem(JSON.parse(JSON.stringify(g)));
    if (!p.ok) {
      console.log(size, s, p.error);
      faults++;
      continue;
    }
    const t = performance.now();
    const plan = solve(p.value);
    times.push(performance.now() - t);
    rounds += plan.stats.rounds;
    const j = evaluate(g, plan);
    const own = evaluatePlan(p.value, plan);
    if (!j.feasible || JSON.stringify(j.objective) !== JSON.stringify(plan.objective) || !own.feasible) {
      bad++;
      console.log(size, s, j.broken.slice(0, 3), j.objective, plan.objective);
    }
    if (s < 5) console.log(size, s, JSON.stringify(j.objective), JSON.stringify(j.parts));
  }
  times.sort((a, b) => a - b);
  console.log(
    size,
    'bad',
    bad,
    'faults',
    faults,
    'p50',
    times[times.length >> 1]?.toFixed(1),
    'p95',
    times[Math.floor(times.length * 0.95)]?.toFixed(1),
    'rounds',
    rounds / N,
  );
}
