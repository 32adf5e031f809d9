// Ticks to seconds through the tempos of an arrangement.

import { present } from '#core';
import type { Arrangement } from '#music';

/** A function from ticks to seconds from the start. */
export function createTimeMap({
  tempos,
  ticksPerCrotchet,
}: Pick<Arrangement, 'tempos' | 'ticksPerCrotchet'>): (tick: number) => number {
  const starts: { readonly tick: number; readonly seconds: number; readonly perTick: number }[] = [];
  for (const { tick, perMinute } of tempos) {
    const before = starts.at(-1);
    starts.push({
      tick,
      seconds: before === undefined ? 0 : before.seconds + (tick - before.tick) * before.perTick,
      perTick: 60 / perMinute / ticksPerCrotchet,
    });
  }
  return (tick) => {
    const from = present(starts.findLast((start) => start.tick <= tick) ?? starts[0], 'a tempo');
    return from.seconds + (tick - from.tick) * from.perTick;
  };
}
