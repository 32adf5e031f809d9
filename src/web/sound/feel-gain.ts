// What brings the band to -16 LUFS (sound's target) in each feel, before anything of a track has been heard: measured over
// eight bars of each with the shipped bank, ITU-R BS.1770-4. A file is levelled by its own measure; the player may be a
// decibel or so from it.

import type { FeelId } from '#music';

const loudness: Readonly<Record<FeelId, number>> = {
  swing: -25.4,
  'two-feel': -28.8,
  shuffle: -25.7,
  straight: -25.8,
  bossa: -26,
  son: -24.7,
  rumba: -25.2,
  waltz: -26.4,
  'six-eight': -25,
  rock: -24.8,
  ballad: -31.2,
};

export const gainByFeel: Readonly<Record<FeelId, number>> = Object.fromEntries(
  Object.entries(loudness).map(([feel, lufs]) => [feel, 10 ** ((-16 - lufs) / 20)]),
) as Record<FeelId, number>; // every feel of the table above
