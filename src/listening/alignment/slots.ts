// The places in a beat a note can be written on, in twelfths of a beat, and how readily each is believed.

import { swungPlace } from './swing.ts';

/** Twelfths in a beat: quavers (6), triplets (4) and semiquavers (3) are all whole. */
export const ticksPerBeat = 12;

export interface Slot {
  readonly tick: number;
  /** Natural log of how often notes begin here, before anything is heard; common practice, no source. */
  readonly prior: number;
  /** Which division of the beat it needs; 1 for the beat itself. */
  readonly division: 1 | 2 | 3 | 4 | 6;
}

const slot = (tick: number, share: number, division: Slot['division']): Slot => ({
  tick,
  prior: Math.log(share),
  division,
});

const simple: readonly Slot[] = [
  slot(0, 0.46, 1),
  slot(6, 0.3, 2),
  slot(3, 0.07, 4),
  slot(9, 0.09, 4),
  slot(4, 0.035, 3),
  slot(8, 0.035, 3),
  slot(2, 0.004, 6),
  slot(10, 0.004, 6),
];
const compound: readonly Slot[] = [
  slot(0, 0.4, 1),
  slot(4, 0.22, 3),
  slot(8, 0.24, 3),
  slot(2, 0.03, 6),
  slot(6, 0.04, 6),
  slot(10, 0.04, 6),
  slot(3, 0.01, 4),
  slot(9, 0.01, 4),
];

/** The slots of a beat that divides by two or by three. */
export function slotsOf(isCompound: boolean): readonly Slot[] {
  return isCompound ? compound : simple;
}

/** Where a tick sounds within its beat, 0 … 1: binary places swing, thirds do not. */
export function tickPlace(tick: number, swing: number, isCompound: boolean): number {
  const within = tick / ticksPerBeat;
  return isCompound || tick % 3 !== 0 ? within : swungPlace(within, swing);
}
