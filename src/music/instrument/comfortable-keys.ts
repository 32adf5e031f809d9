// Which keys come first on an instrument, and how far out a student of a stage goes.

import type { Stage } from '#core';
import { fifthsToKey, type Key, keyFifths, parseKey } from '../key/key.ts';
import type { Instrument } from './instrument.ts';

/** Most sharps or flats by stage, beyond the first keys themselves (common practice, no source). */
const mostAccidentals: Readonly<Record<Stage, number>> = {
  beginner: 1,
  elementary: 3,
  intermediate: 4,
  advanced: 6,
};

/** Signatures of the first keys, in the order they are usually taught, each once. */
function firstSignatures(instrument: Instrument): readonly number[] {
  const fifths = instrument.firstKeys.split(' ').flatMap((text) => {
    const key = parseKey(text);
    return key === null ? [] : [keyFifths(key)];
  });
  return [...new Set(fifths)];
}

/**
 * Written keys for this instrument and stage, the most comfortable first: the instrument's first keys in order, then the
 * others by how near they lie to those on the line of fifths, as far out as the stage goes. Minor keys follow their
 * relative majors. Alto saxophone beginner, major → G, D, C, F
 */
export function comfortableKeys(instrument: Instrument, stage: Stage, mode: Key['mode']): readonly Key[] {
  const first = firstSignatures(instrument);
  const centre = first.reduce((sum, f) => sum + f, 0) / Math.max(1, first.length);
  const most = mostAccidentals[stage];
  const further: number[] = [];
  for (let fifths = -most; fifths <= most; fifths++) {
    if (!first.includes(fifths) && !(fifths === -6 && most >= 6)) further.push(fifths);
  }
  further.sort((a, b) => Math.abs(a - centre) - Math.abs(b - centre) || Math.abs(a) - Math.abs(b) || b - a);
  return [...first, ...further].map((fifths) => fifthsToKey(fifths, mode));
}
