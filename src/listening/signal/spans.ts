// The least, the greatest and the middle of a span of values: what level, rise and pitch are compared with.

/** The least value from index `from` to `to`, both included and cut to the array; Infinity of none. */
export function least(values: Float32Array, from: number, to: number): number {
  let best = Infinity;
  const last = Math.min(values.length - 1, to);
  for (let t = Math.max(0, from); t <= last; t++) best = Math.min(best, values[t] ?? 0);
  return best;
}

/** The greatest value from index `from` to `to`, both included and cut to the array; -Infinity of none. */
export function greatest(values: Float32Array, from: number, to: number): number {
  let best = -Infinity;
  const last = Math.min(values.length - 1, to);
  for (let t = Math.max(0, from); t <= last; t++) best = Math.max(best, values[t] ?? 0);
  return best;
}

/** The upper median from index `from` to `to`, both included and cut to the array; 0 of none. */
export function median(values: Float32Array, from: number, to: number): number {
  const near = values.slice(Math.max(0, from), Math.max(0, Math.min(values.length, to + 1))).sort();
  return near[near.length >> 1] ?? 0;
}

/** The value below which a share `q` (0 … 1) of all values lies; 0 of none. */
export function quantile(values: Float32Array, q: number): number {
  const sorted = values.slice().sort();
  return sorted[Math.max(0, Math.min(sorted.length - 1, Math.floor(q * sorted.length)))] ?? 0;
}
