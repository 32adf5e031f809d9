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

/** Share of a list that must lie near the middle for the rest to be strays. */
const near = 0.8;
/** What a normal deviate keeps of its values within one spread times these: the half, and the share above. */
const halfReach = 0.6745;
const nearReach = 1.2816;

/**
 * Mean and spread of what lies within 3.5 spreads of the middle: a wrong note does not move them. Values that fall into two
 * heaps are no strays of each other.
 */
export function steadyMean(list: readonly number[]): {
  readonly mean: number;
  readonly spread: number;
  readonly count: number;
} {
  const centre = middle(list);
  const away = list.map((x) => Math.abs(x - centre));
  const spread = Math.max(middle(away) / halfReach, quantileOf(away, near) / nearReach);
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
