// The notes one length of brass tube gives, against equal temperament.

/** Semitones above the fundamental that a partial is taken for. `partialSemitones(7)` → 34 */
export function partialSemitones(partial: number): number {
  return Math.round(12 * Math.log2(partial));
}

/** Cents a partial lies from that. Third 1.955, fifth -13.686, seventh -31.174 */
export function partialCents(partial: number): number {
  return 1200 * Math.log2(partial) - 100 * partialSemitones(partial);
}

/** Cents by which tubes of these semitones, switched in together, fall short: 1 and 2 and 3 together 53.56. */
export function tubeShortfallCents(semitones: readonly number[]): number {
  const wanted = semitones.reduce((sum, s) => sum + s, 0);
  const length = semitones.reduce((sum, s) => sum + 2 ** (s / 12) - 1, 1);
  return 100 * wanted - 1200 * Math.log2(length);
}
