// Choosing bars to go round: by dragging over them, by pressing the first and the last, or by keys.

/** Bars by their numbers, both included. */
export interface BarRange {
  readonly first: number;
  readonly last: number;
}

export const rangeOf = (a: number, b: number): BarRange => ({ first: Math.min(a, b), last: Math.max(a, b) });

/** A press chooses one bar, and a second one as far as there; the one bar again lets go. */
export function pressBar(range: BarRange | null, bar: number): BarRange | null {
  if (range === null || range.first !== range.last) return rangeOf(bar, bar);
  return range.first === bar ? null : rangeOf(range.first, bar);
}

/** Where a key leads among bars 1 to `count` of which `columns` stand side by side; null where it leads nowhere. */
export function barAfterKey(key: string, bar: number, count: number, columns: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowLeft: -1,
    ArrowDown: columns,
    ArrowUp: -columns,
  };
  if (key === 'Home') return 1;
  if (key === 'End') return count;
  const step = steps[key];
  if (step === undefined) return null;
  const next = bar + step;
  return next < 1 || next > count ? bar : next;
}
