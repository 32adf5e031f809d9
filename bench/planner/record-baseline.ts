// Records what HiGHS finds on generated problems, so that later runs of the bench can be compared without waiting:
// npx tsx --conditions=levare-source bench/planner/record-baseline.ts --to FILE --from SEED --count N [--sizes small,medium,large]
// [--seconds 30]. Problems already in the file are left as they are; the file is written after each problem.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { Objective } from '#planning';
import { generateProblem, type ProblemSize, problemSizes } from './generate.ts';
import { solveWithHighs } from './solve-with-highs.ts';

export interface BaselineRow {
  readonly size: ProblemSize;
  readonly seed: number;
  readonly objective: Objective | null;
  /** Levels HiGHS proved optimal, as `UPE`. */
  readonly proven: string;
  readonly seconds: number;
  readonly secondsPerLevel: number;
}

/** Rows of a baseline file, none when it does not exist. */
export function readBaseline(file: string): readonly BaselineRow[] {
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as BaselineRow[]) : [];
}

/** HiGHS on one generated problem, as a row for the file. */
export async function measureBaseline(
  size: ProblemSize,
  seed: number,
  secondsPerLevel: number,
): Promise<BaselineRow> {
  const { objective, proven, seconds } = await solveWithHighs(generateProblem(size, seed), secondsPerLevel);
  return {
    size,
    seed,
    objective,
    proven: proven.join(''),
    seconds: Math.round(seconds * 10) / 10,
    secondsPerLevel,
  };
}

/** Laid out as the formatter would. */
export function writeBaseline(file: string, rows: readonly BaselineRow[]): void {
  writeFileSync(file, `${JSON.stringify(rows, null, 2)}\n`);
}

async function main(args: readonly string[]): Promise<void> {
  const option = (name: string, missing: string): string => {
    const at = args.indexOf(`--${name}`);
    return at < 0 ? missing : (args[at + 1] ?? missing);
  };
  const file = option('to', 'bench/output/baseline.json');
  const from = Number(option('from', '1'));
  const count = Number(option('count', '10'));
  const sizes = (['tiny', ...problemSizes] as const).filter((size) =>
    option('sizes', problemSizes.join()).split(',').includes(size),
  );
  const rows = [...readBaseline(file)];
  for (let seed = from; seed < from + count; seed++)
    for (const size of sizes) {
      if (rows.some((row) => row.size === size && row.seed === seed)) continue;
      const row = await measureBaseline(size, seed, Number(option('seconds', '30')));
      rows.push(row);
      writeBaseline(file, rows);
      console.log(JSON.stringify(row));
    }
}

if (process.argv[1]?.endsWith('record-baseline.ts') === true) await main(process.argv.slice(2));
