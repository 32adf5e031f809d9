// Ours and the reference programs on the same takes in one run, group by group. `npm run bench -- --only listening`.

import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runEvidenceBench } from './evidence-error.ts';
import { ourListener } from './our-listener.ts';
import { readTakes } from './read-takes.ts';
import { aubio } from './reference/aubio.ts';
import { basicPitch } from './reference/basic-pitch.ts';
import { essentia } from './reference/essentia.ts';
import { pitchfinder } from './reference/pitchfinder.ts';
import { pitchy } from './reference/pitchy.ts';
import { formatScore, type Listener, type ListenerScore, scoreListener } from './score-table.ts';
import { writeTakes } from './take-set/write-takes.ts';
import { runWorkerBench } from './worker-speed.ts';

export interface ListeningBench {
  /** `dev`, `held` or `all`. */
  readonly split: string;
  readonly dir: string;
  /** Leaves the reference programs out. */
  readonly alone: boolean;
}

export const takesFolder = join(tmpdir(), 'levare-takes');

// what acceptance asks of ours, by group
const goals: Readonly<Record<string, number>> = {
  clean: 0.97,
  jitter: 0.97,
  quiet: 0.97,
  noise: 0.95,
  legato: 0.95,
  vibrato: 0.92,
  bleed: 0.9,
  fast: 0.85,
  hard: 0.85,
};

/** Prints the table; true when ours meets the goals and is best in every group. */
export async function runListeningBench(options: ListeningBench): Promise<boolean> {
  if (!existsSync(options.dir)) {
    console.log(`Writing the take set to ${options.dir} (about a minute)`);
    await writeTakes(options.dir);
  }
  const takes = readTakes({ dir: options.dir, split: options.split === 'all' ? undefined : options.split });
  const others = options.alone ? [] : await referenceListeners();
  const ours = await scoreListener(ourListener(), takes);
  console.log(`\nNotes heard in ${takes.length} takes (${options.split})\n${formatScore(ours)}`);
  const scores: ListenerScore[] = [];
  for (const listener of others) {
    const score = await scoreListener(listener, takes);
    scores.push(score);
    console.log(formatScore(score));
  }
  console.log(`\n${formatTable([ours, ...scores])}`);
  const missed = ours.groups.filter((g) => g.f1 < (goals[g.group] ?? 0));
  for (const g of missed)
    console.log(`  ${g.group}: ${g.f1.toFixed(3)} misses the goal of ${goals[g.group]}`);
  const beaten = ours.groups.flatMap((g) =>
    scores.flatMap((s) => {
      const other = s.groups.find((o) => o.group === g.group)?.f1 ?? 0;
      return other > g.f1 ? [`  ${g.group}: ${s.name} hears more (${other.toFixed(3)})`] : [];
    }),
  );
  for (const line of beaten) console.log(line);
  runEvidenceBench(takes);
  await runWorkerBench(options.dir);
  return missed.length === 0 && beaten.length === 0;
}

async function referenceListeners(): Promise<readonly Listener[]> {
  const found: Listener[] = [];
  const npm = 'run `npm install` in bench/listening/reference';
  const wanted: readonly (readonly [string, string, () => Promise<Listener | null> | Listener | null])[] = [
    ['aubio', 'install `aubio-tools` with apt', aubio],
    ['pitchy', npm, pitchy],
    ['pitchfinder', npm, pitchfinder],
    ['essentia.js', npm, essentia],
    ['@spotify/basic-pitch', npm, basicPitch],
  ];
  for (const [name, remedy, open] of wanted) {
    const listener = await open();
    if (listener === null)
      console.log(`${name} is not installed and is left out of the comparison: ${remedy} to have it in.`);
    else found.push(listener);
  }
  return found;
}

function formatTable(scores: readonly ListenerScore[]): string {
  const groups = scores[0]?.groups.map((g) => g.group) ?? [];
  const head = ['F1'.padEnd(24), ...groups.map((g) => g.padStart(8)), ' overall', '     raw', '  speed'].join(
    '',
  );
  const rows = scores.map((s) =>
    [
      s.name.padEnd(24),
      ...groups.map((g) => (s.groups.find((o) => o.group === g)?.f1 ?? 0).toFixed(3).padStart(8)),
      s.overall.f1.toFixed(3).padStart(8),
      (s.overall.rawPitch?.toFixed(3) ?? '-').padStart(8),
      `${s.speed.toFixed(0)}×`.padStart(7),
    ].join(''),
  );
  return [head, ...rows].join('\n');
}
