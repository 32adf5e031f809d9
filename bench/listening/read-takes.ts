// The takes on disk, as make-takes.ts wrote them.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TakeTruth } from './take-set/make-take.ts';

export interface Take {
  readonly path: string;
  readonly truth: TakeTruth;
}

export interface TakeFilter {
  readonly dir: string;
  readonly group?: string | undefined;
  readonly split?: string | undefined;
  readonly sound?: string | undefined;
  readonly id?: string | undefined;
}

/** The takes of a folder that fit the filter, in name order; none when the folder is missing. */
export function readTakes(filter: TakeFilter): readonly Take[] {
  if (!existsSync(filter.dir)) return [];
  return readdirSync(filter.dir)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => ({
      path: join(filter.dir, name.replace(/json$/, 'wav')),
      truth: JSON.parse(readFileSync(join(filter.dir, name), 'utf8')) as TakeTruth,
    }))
    .filter(
      ({ truth }) =>
        (filter.group === undefined || truth.group === filter.group) &&
        (filter.split === undefined || truth.split === filter.split) &&
        (filter.sound === undefined || truth.sound.includes(filter.sound)) &&
        (filter.id === undefined || truth.id.includes(filter.id)),
    );
}
