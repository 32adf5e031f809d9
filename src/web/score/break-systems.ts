// Breaks a row of bars into systems, as an engraver casts off a page: every system but a short last one fills its line,
// and the width of a minute varies as little as it can from system to system. Shortest path over the possible breaks,
// after Knuth and Plass, "Breaking Paragraphs into Lines" (1981), with the squared log of the stretch as badness.

import { present } from '#core';

/** A bar takes `fixed` pixels and, beside them, `minutes` times the width of a minute. */
export interface BarWidth {
  readonly fixed: number;
  readonly minutes: number;
}

export interface SystemBreak {
  /** Bars `from` to `to`, the latter not included. */
  readonly from: number;
  readonly to: number;
  /** Pixels a minute is wide. */
  readonly perMinute: number;
  /** Factor on the fixed widths: above 1 only where a system holds nothing else to stretch, below 1 in need. */
  readonly stretch: number;
}

/** No minute is narrower than this, in pixels, unless a bar alone on its system is too long for the page. */
export const narrowestMinute = 1.6;

/**
 * The systems for a line `width` pixels wide, with about `wanted` pixels a minute. Every bar is in exactly one system,
 * in order, and no system is wider than the line.
 */
export function breakSystems(bars: readonly BarWidth[], width: number, wanted: number): SystemBreak[] {
  const best: { cost: number; from: number }[] = [{ cost: 0, from: 0 }];
  for (let to = 1; to <= bars.length; to++) {
    let found = { cost: Number.POSITIVE_INFINITY, from: to - 1 };
    for (let from = to - 1; from >= 0; from--) {
      const held = sumOf(bars.slice(from, to));
      const single = to - from === 1;
      if (!single && held.fixed + held.minutes * narrowestMinute > width) break;
      const cost =
        present(best[from], 'a cost for every break before').cost +
        badness(held, width, wanted, to === bars.length);
      if (cost < found.cost) found = { cost, from };
    }
    best.push(found);
  }
  const systems: SystemBreak[] = [];
  for (let to = bars.length; to > 0; ) {
    const { from } = present(best[to], 'a way to every break');
    systems.unshift({ from, to, ...stretchOf(sumOf(bars.slice(from, to)), width) });
    to = from;
  }
  return loosenLast(systems, bars, width, wanted);
}

interface Held {
  readonly fixed: number;
  readonly minutes: number;
}

const sumOf = (bars: readonly BarWidth[]): Held => ({
  fixed: bars.reduce((sum, bar) => sum + bar.fixed, 0),
  minutes: bars.reduce((sum, bar) => sum + bar.minutes, 0),
});

function stretchOf({ fixed, minutes }: Held, width: number): { perMinute: number; stretch: number } {
  if (minutes === 0) return { perMinute: 0, stretch: fixed === 0 ? 1 : width / fixed };
  const perMinute = (width - fixed) / minutes;
  if (perMinute >= narrowestMinute || fixed === 0) return { perMinute, stretch: 1 };
  const squeeze = width / (fixed + minutes * narrowestMinute);
  return { perMinute: narrowestMinute * squeeze, stretch: squeeze };
}

/** A last system may be short, but a very short one looks like a mistake and costs a little. */
function badness(held: Held, width: number, wanted: number, last: boolean): number {
  const natural = held.fixed + held.minutes * wanted;
  if (last && natural < width) return 0.12 * (1 - natural / width) ** 2;
  const { perMinute, stretch } = stretchOf(held, width);
  return Math.log(held.minutes === 0 ? stretch : Math.max(perMinute, 0.01) / wanted) ** 2;
}

/** A last system that would have to be stretched keeps the width of a minute of those above it, and ends short. */
function loosenLast(
  systems: readonly SystemBreak[],
  bars: readonly BarWidth[],
  width: number,
  wanted: number,
): SystemBreak[] {
  const last = systems.at(-1);
  if (last === undefined) return [];
  const above = systems.slice(0, -1).filter((system) => system.perMinute > 0);
  const usual = above.length
    ? above.reduce((sum, system) => sum + system.perMinute, 0) / above.length
    : wanted;
  const held = sumOf(bars.slice(last.from, last.to));
  const short = held.fixed + held.minutes * usual < width * 0.94;
  if (!short) return [...systems];
  return [...systems.slice(0, -1), { ...last, perMinute: usual, stretch: 1 }];
}
