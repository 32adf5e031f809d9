// How plainly a rhythm would be written: from one note to the next it is a quaver, a crotchet, a semiquaver far more often
// than eight or sixteen twelfths of a beat. This tells the beat from one three halves as fast, where swung or dotted notes
// lie on places too.

/** How often notes lie this many twelfths of a beat apart; common practice, no source. */
const shares: ReadonlyMap<number, number> = new Map([
  [1, 0.002],
  [2, 0.01],
  [3, 0.1],
  [4, 0.03],
  [6, 0.36],
  [8, 0.02],
  [9, 0.04],
  [12, 0.24],
  [16, 0.005],
  [18, 0.06],
  [24, 0.07],
  [30, 0.012],
  [36, 0.02],
  [48, 0.02],
]);
const otherShare = 0.003;

/** The natural log of the likelihood of the steps from note to note, in order. */
export function rhythmBelief(placed: readonly { readonly tick: number }[]): number {
  let sum = 0;
  for (const [i, { tick }] of placed.entries()) {
    const before = placed[i - 1];
    if (before !== undefined) sum += Math.log(shares.get(tick - before.tick) ?? otherShare);
  }
  return sum;
}
