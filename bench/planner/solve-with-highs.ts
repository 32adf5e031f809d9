// Runs HiGHS on a planning problem, level by level. A development tool: seconds to minutes per problem.

import { createRequire } from 'node:module';
import type { LegacyHighs } from 'highs';
import type { Objective, Plan, PlanningProblem } from '#planning';
import { createMipModel, type Level } from './highs-model.ts';

export interface HighsAnswer {
  /** The best plan found, or null when HiGHS found none in the time. */
  readonly plan: Plan | null;
  readonly objective: Objective | null;
  /** Levels that HiGHS proved to be optimal, each on top of the one before. */
  readonly proven: readonly Level[];
  readonly seconds: number;
}

// the package's types describe its CommonJS form
const load: () => Promise<LegacyHighs> = createRequire(import.meta.url)('highs');
let loaded: Promise<LegacyHighs> | null = null;

/** Solves with at most `secondsPerLevel` for each of U, P and E. */
export async function solveWithHighs(
  problem: PlanningProblem,
  secondsPerLevel: number,
): Promise<HighsAnswer> {
  loaded ??= load();
  const highs = await loaded;
  const model = createMipModel(problem);
  const start = performance.now();
  const proven: Level[] = [];
  const held: Partial<Record<Level, number>> = {};
  let plan: Plan | null = null;
  for (const level of ['U', 'P', 'E'] as const) {
    const result = highs.solve(model.lpFor(level, held), {
      time_limit: secondsPerLevel,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-4,
    });
    const columns = result.Columns as Readonly<Record<string, { readonly Primal?: number }>>;
    const found = model.planFrom((name) => columns[name]?.Primal ?? 0);
    const holds = result.Status === 'Optimal' || result.Status === 'Time limit reached';
    if (
      holds &&
      Object.keys(columns).length > 0 &&
      (plan === null || isBetter(found.objective, plan.objective))
    )
      plan = found;
    if (result.Status === 'Optimal' && proven.length === ['U', 'P', 'E'].indexOf(level)) proven.push(level);
    if (plan === null) break;
    held[level] = plan.objective[level];
  }
  return { plan, objective: plan?.objective ?? null, proven, seconds: (performance.now() - start) / 1000 };
}

/** Whether a is better than b: smaller in the first of U, P and E in which they differ. */
export function isBetter(a: Objective, b: Objective): boolean {
  for (const level of ['U', 'P', 'E'] as const)
    if (Math.abs(a[level] - b[level]) > 1e-6) return a[level] < b[level];
  return false;
}
