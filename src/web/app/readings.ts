// Which readings may be older than the changes that were told of. The live line counts its changes (see `toldHeader`), and
// each answer says what that count was when the server began on it.

/** The count that the line said last. */
let line = 0;
/** The lowest count of all that was read so far. */
let oldest = Number.POSITIVE_INFINITY;

/** Notes the count an answer came with; false where the line has told of a change since, so that it has to be asked for again. */
export function noteReading(told: string | null): boolean {
  if (told === null) return true; // it came past the server
  const count = Number(told);
  if (count < line) return false;
  oldest = Math.min(oldest, count);
  return true;
}

/** Heeds the count that the line says; true where something was read before the changes it has counted. */
export function heedTold(told: unknown): boolean {
  if (typeof told !== 'number') return false;
  line = told;
  return oldest < told;
}
