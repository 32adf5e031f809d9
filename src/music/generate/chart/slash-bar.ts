// Slashes: where the player makes it up.

import type { Metre } from '../../rhythm/metre.ts';
import { slash } from '../../score/create-score.ts';
import { beatGrid } from '../rhythm/beat-grid.ts';
import type { TimedEvent } from '../sheet/write-line.ts';

/** Beat slashes for a bar to improvise in, from some ticks on. */
export function slashBar(metre: Metre, at: number): readonly TimedEvent[] {
  return beatGrid(metre).map((beat) => ({
    slot: { at: at + beat.at, length: beat.length, isRest: false, tuplet: null },
    event: slash({ n: 1, d: 4 }),
  }));
}
