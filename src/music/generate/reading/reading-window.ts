// Which neighbouring notes of a key a reading line uses: around the middle of the staff and the range, the tonic low among
// them, so that home is below and there is somewhere to go.

import { present } from '#core';
import type { Clef, WrittenRange } from '../../instrument/instrument.ts';
import { isInRange } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import type { WrittenPitch } from '../../pitch/pitch.ts';
import { staffStep } from '../../pitch/pitch.ts';
import { spellScale } from '../../scale/scale.ts';
import { ledgerLines } from '../sheet/choose-clef.ts';
import { ladder, type Rung } from '../sheet/ladder.ts';

export interface Window {
  readonly notes: readonly { readonly pitch: WrittenPitch; readonly degree: number }[];
}

export interface WindowWish {
  readonly key: Key;
  readonly range: WrittenRange;
  readonly clef: Clef;
  /** Where the window lies best, in letter steps. */
  readonly middle: number;
  /** How many notes. */
  readonly count: number;
  readonly ledgers: number;
  readonly easy: WrittenRange | null;
}

/** The best window, with fewer notes where the range is narrow; null with no tonic and two notes beside it in reach. */
export function chooseWindow(wish: WindowWish): Window | null {
  const names = spellScale(wish.key.tonic, wish.key.mode === 'major' ? 'major' : 'natural_minor');
  const all = ladder(names, wish.range);
  const legible = all.filter(({ pitch }) => ledgerLines(wish.clef, pitch) <= wish.ledgers);
  // A tuba lives below its staff: where the few lines hold no window, the range alone decides.
  return windowAmong(legible, wish) ?? windowAmong(all, wish);
}

function windowAmong(rungs: readonly Rung[], { clef, middle, count, easy }: WindowWish): Window | null {
  for (let size = Math.min(count, rungs.length); size >= 3; size--) {
    let best: Window | null = null;
    let lowest = Number.POSITIVE_INFINITY;
    for (let from = 0; from + size <= rungs.length; from++) {
      const notes = rungs.slice(from, from + size);
      const tonic = notes.findIndex(({ degree }) => degree === 0);
      // Home with a note above it to fall from, or below it to rise from.
      if (tonic < 0) continue;
      const centre = present(notes[Math.floor((size - 1) / 2)], 'a middle note').pitch;
      const ledgerCost = notes.reduce((sum, { pitch }) => sum + ledgerLines(clef, pitch), 0) / size;
      const strained = easy === null ? 0 : notes.filter(({ pitch }) => !isInRange(easy, pitch)).length;
      const wishedTonic = size <= 6 ? 0 : Math.min(4, size - 8);
      const cost =
        Math.abs(staffStep(centre) - middle) +
        4 * ledgerCost +
        3 * strained +
        (size <= 6 ? 5 : 1.5) * Math.abs(tonic - Math.max(0, wishedTonic));
      if (cost < lowest) [best, lowest] = [{ notes }, cost];
    }
    if (best !== null) return best;
  }
  return null;
}
