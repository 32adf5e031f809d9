// Names for heard keys: a MIDI number says nothing of sharps and flats; the key signature does.

import { modulo } from '#core';
import {
  fifthsToKey,
  fifthsToName,
  type Key,
  keyFifths,
  pitchClass,
  type WrittenPitch,
  written,
} from '#music';

/** How far below a key's tonic, on the line of fifths, its flattened notes reach: flat third and seventh are usual, and raised notes lead on. */
const flatReach = 3;

/** The written pitch of a key number, spelt for a signature. `spellHeard(66, one sharp)` → F sharp 4 */
export function spellHeard(midi: number, key: Key): WrittenPitch {
  const lowest = keyFifths(key) - flatReach;
  const place = lowest + modulo(midi * 7 - lowest, 12);
  const name = fifthsToName(place);
  return written({ ...name, octave: Math.floor((midi - name.alter) / 12) - 1 });
}

/** The major key whose notes hold most of the playing (weights by pitch class), the simplest of equals. */
export function findSignature(weights: ReadonlyMap<number, number>): Key {
  let best = { score: Number.NEGATIVE_INFINITY, fifths: 0 };
  for (let fifths = -6; fifths <= 6; fifths++) {
    let score = -0.001 * Math.abs(fifths);
    for (let step = -1; step <= 5; step++) score += weights.get(pitchClass(fifthsToName(fifths + step))) ?? 0;
    if (score > best.score) best = { score, fifths };
  }
  return fifthsToKey(best.fifths, 'major');
}
