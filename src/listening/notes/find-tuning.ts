// Where the player's keys lie between those of equal temperament at 440 Hz: the mean direction of all pitches on the
// circle of one semitone (circular statistics, Mardia & Jupp 2000, §2.2).

import type { Moments } from './moments.ts';

/** The player's tuning in semitones off A4 = 440 Hz, -0.5 … 0.5; near 0 when the pitches agree on none. */
export function findTuning(moments: Moments): number {
  let x = 0;
  let y = 0;
  let sum = 0;
  for (let t = 0; t < moments.count; t++) {
    const weight = moments.presence[t] ?? 0;
    const angle = 2 * Math.PI * (moments.still[t] ?? 0);
    x += weight * Math.cos(angle);
    y += weight * Math.sin(angle);
    sum += weight;
  }
  if (sum === 0) return 0;
  const agreement = Math.hypot(x, y) / sum;
  return (Math.atan2(y, x) / (2 * Math.PI)) * Math.min(1, 2 * agreement);
}
