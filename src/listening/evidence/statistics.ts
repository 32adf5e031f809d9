// Means, middles and spreads of lists.

/** 0 of none. */
export function mean(list: readonly number[]): number {
  return list.length === 0 ? 0 : list.reduce((sum, x) => sum + x, 0) / list.length;
}

/** Standard deviation about the mean (n - 1); 0 of fewer than two. */
export function deviation(list: readonly number[]): number {
  const middle = mean(list);
  return list.length < 2
    ? 0
    : Math.sqrt(list.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (list.length - 1));
}

/** The value below which a share `q` lies, between neighbours in proportion; 0 of none. */
export function quantileOf(list: readonly number[], q: number): number {
  const sorted = [...list].sort((a, b) => a - b);
  const at = q * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? 0;
  return low + ((sorted[Math.ceil(at)] ?? low) - low) * (at - Math.floor(at));
}

/** 0 of none. */
export function middle(list: readonly number[]): number {
  return quantileOf(list, 0.5);
}

/** Mean and spread of what lies within three spreads of the middle: a wrong note does not move them. */
export function steadyMean(list: readonly number[]): {
  readonly mean: number;
  readonly spread: number;
  readonly count: number;
} {
  const centre = middle(list);
  const spread = 1.4826 * middle(list.map((x) => Math.abs(x - centre)));
  const kept = spread === 0 ? list : list.filter((x) => Math.abs(x - centre) <= 3.5 * spread);
  return { mean: mean(kept), spread: deviation(kept), count: kept.length };
}

/** Half-width within which a mean of `count` values with this spread lies nineteen times in twenty. */
export function meanUncertainty(spread: number, count: number): number {
  return (2 * spread) / Math.sqrt(Math.max(1, count));
}

/** The same for the spread itself (of a normal deviate). */
export function spreadUncertainty(spread: number, count: number): number {
  return (2 * spread) / Math.sqrt(2 * Math.max(1, count - 1));
}
