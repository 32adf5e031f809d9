// The curve a phrase follows: up to one high point past the middle and home (common practice, no source).

/** Height from 0 to 1 at a share of the phrase. The high point lies at `peak`. `arch(0.6, 0.6)` → 1 */
export function arch(share: number, peak: number): number {
  const x = share < peak ? share / peak : (1 - share) / (1 - peak);
  return Math.sin((Math.max(0, Math.min(1, x)) * Math.PI) / 2);
}
