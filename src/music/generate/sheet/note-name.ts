// Names under notes, for students who ask for them: letters, or movable sol-fa with the tonic of a minor key as la
// (common practice, no source).

import { present } from '#core';
import { type Key, keyFifths } from '../../key/key.ts';
import { nameToFifths, type PitchName } from '../../pitch/pitch.ts';

/** By place on the line of fifths from the do of the key: fa is -1, do 0, so 1, … di is 7; ta is -2. */
const solFa: Readonly<Record<number, string>> = {
  [-6]: 'se',
  [-5]: 'ra',
  [-4]: 'lo',
  [-3]: 'ma',
  [-2]: 'ta',
  [-1]: 'fa',
  0: 'do',
  1: 'so',
  2: 're',
  3: 'la',
  4: 'mi',
  5: 'ti',
  6: 'fi',
  7: 'di',
  8: 'si',
  9: 'ri',
  10: 'li',
};

/** The name under a note; null for none. G sharp in A minor → `G♯` or `si` */
export function noteName(name: PitchName, key: Key, style: 'none' | 'letters' | 'sol_fa'): string | null {
  if (style === 'none') return null;
  if (style === 'letters')
    return name.letter + present(['♭♭', '♭', '', '♯', '𝄪'][name.alter + 2], 'a usual accidental');
  return solFa[nameToFifths(name) - keyFifths(key)] ?? name.letter;
}
