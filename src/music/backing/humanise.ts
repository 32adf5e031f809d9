// Players are not machines: notes a little off the grid and apart in loudness, within limits.

import { present, type Random, randomInteger } from '#core';
import type { ArrangedBar, ArrangedNote } from './arrangement.ts';
import { type BackingSpec, humanLimits } from './backing-spec.ts';

/**
 * Moves notes a little off the grid and apart in loudness, those struck together as one. A note stays inside the stretch
 * of bars that its part plays, and ends before the same note is struck again.
 */
export function humanised(
  notes: readonly ArrangedNote[],
  spec: BackingSpec,
  bars: readonly ArrangedBar[],
  loudness: number,
  random: Random,
): readonly ArrangedNote[] {
  const stretches = stretchesOfOneRole(bars);
  const length = present(bars[0], 'a bar').ticks;
  const shiftByGrid = new Map<number, number>();
  const most = Math.round(humanLimits.ticks * spec.humanise);
  const louder = Math.round(humanLimits.velocity * spec.humanise);
  // The mean of two chances: mostly close, seldom at the limit.
  const near = (limit: number) =>
    Math.round((randomInteger(random, -limit, limit) + randomInteger(random, -limit, limit)) / 2);
  const moved = notes.map((note) => {
    const shift = shiftByGrid.get(note.grid) ?? near(most);
    shiftByGrid.set(note.grid, shift);
    const change = near(louder);
    const { from, to } = present(
      stretches[Math.min(bars.length - 1, Math.floor(note.grid / length))],
      'a bar',
    );
    const tick = Math.max(from, note.grid + shift);
    return {
      ...note,
      tick,
      ticks: Math.max(1, Math.min(tick + note.ticks, to) - tick),
      velocity: Math.max(1, Math.min(127, Math.round((note.velocity + change) * (0.3 + 0.7 * loudness)))),
    };
  });
  const struckAgain = new Map<number, number>();
  return moved
    .toSorted((a, b) => b.tick - a.tick)
    .flatMap((note) => {
      const again = struckAgain.get(note.midi) ?? Number.POSITIVE_INFINITY;
      struckAgain.set(note.midi, note.tick);
      return again === note.tick ? [] : [{ ...note, ticks: Math.min(note.ticks, again - note.tick) }];
    });
}

/** For each bar, from where to where the bars around it have its role; the band's last chord rings beyond the last bar. */
function stretchesOfOneRole(
  bars: readonly ArrangedBar[],
): readonly { readonly from: number; readonly to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  bars.forEach((bar, at) => {
    const before = stretches[at - 1];
    const goesOn = before !== undefined && bars[at - 1]?.role === bar.role;
    const stretch = goesOn ? before : { from: bar.tick, to: 0 };
    stretch.to = bar.isLast ? Number.POSITIVE_INFINITY : bar.tick + bar.ticks;
    stretches.push(stretch);
  });
  return stretches;
}
