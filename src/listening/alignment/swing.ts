// Swing: where the off-beat quaver falls in its beat. Written two ways: as the share of the beat the first quaver takes
// (0.5 straight), or as the ratio of the first to the second (1 straight, 2 for a triplet feel).

/** 0.667 → 2 */
export function shareToRatio(share: number): number {
  return share / (1 - share);
}

/** Where a place within the beat (0 … 1) sounds once quavers swing. `swungPlace(0.5, 0.6)` → 0.6 */
export function swungPlace(within: number, swing: number): number {
  return within <= 0.5 ? within * 2 * swing : swing + (within - 0.5) * 2 * (1 - swing);
}
