// Where an arrow key leads on the score. Left and right keep to a line (the bars' heads, a strand, the shared line) through
// all systems; up and down go to the nearest thing on the next line that has any, and on into the next system.

import type { ScoreLayout } from './layout.ts';

export type Direction = 'left' | 'right' | 'up' | 'down' | 'home' | 'end' | 'first' | 'last';

interface Stop {
  readonly id: string;
  readonly x: number;
}
/** One line of one system: row -1 holds the bars' heads. */
interface Line {
  readonly system: number;
  readonly row: number;
  readonly stops: readonly Stop[];
}

/** Lines of everything that can be focused, from top to bottom, each from left to right; empty ones are left away. */
export function focusLines({ systems }: ScoreLayout): Line[] {
  return systems.flatMap((system) => {
    const heads: Line = {
      system: system.index,
      row: -1,
      stops: system.bars.map((bar) => ({ id: bar.id, x: bar.x })),
    };
    const rows = system.rows.map(
      (_, row): Line => ({
        system: system.index,
        row,
        stops: system.bars.flatMap((bar) =>
          bar.blocks.filter((b) => b.row === row).map((b) => ({ id: b.segment.id, x: b.x })),
        ),
      }),
    );
    return [heads, ...rows].filter((line) => line.stops.length > 0);
  });
}

/**
 * The id that the key leads to from `id`, or `id` itself where there is nothing that way. An id that is not on the
 * score leads to the first thing on it; null only for an empty score.
 */
export function moveFocus(layout: ScoreLayout, id: string | null, direction: Direction): string | null {
  const lines = focusLines(layout);
  const at = lines.findIndex((line) => line.stops.some((stop) => stop.id === id));
  const line = lines[at];
  if (line === undefined || id === null) return lines[0]?.stops[0]?.id ?? null;
  const place = line.stops.findIndex((stop) => stop.id === id);
  const x = line.stops[place]?.x ?? 0;
  switch (direction) {
    case 'home':
      return line.stops[0]?.id ?? id;
    case 'end':
      return line.stops.at(-1)?.id ?? id;
    case 'first':
      return lines[0]?.stops[0]?.id ?? id;
    case 'last':
      return lines.findLast((l) => l.row === -1)?.stops.at(-1)?.id ?? id;
    case 'up':
      return nearest(lines[at - 1], x) ?? id;
    case 'down':
      return nearest(lines[at + 1], x) ?? id;
    case 'left':
      return (
        line.stops[place - 1]?.id ??
        lines
          .slice(0, at)
          .findLast((other) => other.row === line.row)
          ?.stops.at(-1)?.id ??
        id
      );
    case 'right':
      return (
        line.stops[place + 1]?.id ??
        lines.slice(at + 1).find((other) => other.row === line.row)?.stops[0]?.id ??
        id
      );
  }
}

function nearest(line: Line | undefined, x: number): string | undefined {
  let found: Stop | undefined;
  for (const stop of line?.stops ?? [])
    if (found === undefined || Math.abs(stop.x - x) < Math.abs(found.x - x)) found = stop;
  return found?.id;
}
