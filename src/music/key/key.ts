// A key: a tonic and a mode, with its signature on the line of fifths.

import { modulo } from '#core';
import { type Interval, intervalFifths } from '../pitch/interval.ts';
import {
  fifthsToName,
  formatPitchName,
  type Letter,
  nameToFifths,
  type PitchName,
  parsePitchName,
} from '../pitch/pitch.ts';

export interface Key {
  readonly tonic: PitchName;
  readonly mode: 'major' | 'minor';
}

const orderOfSharps: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** Sharps (positive) or flats (negative) in the signature. `keyFifths(E flat major)` → -3 */
export function keyFifths(key: Key): number {
  return nameToFifths(key.tonic) - (key.mode === 'minor' ? 3 : 0);
}

/** The key with this many sharps or flats. `fifthsToKey(-3, 'minor')` → C minor */
export function fifthsToKey(fifths: number, mode: Key['mode']): Key {
  return { tonic: fifthsToName(fifths + (mode === 'minor' ? 3 : 0)), mode };
}

/** The alteration a signature gives each letter. One flat → `{ B: -1, C: 0, … }` */
export function signatureAlters(fifths: number): Readonly<Record<Letter, number>> {
  const alters: Record<Letter, number> = { C: 0, D: 0, E: 0, F: 0, G: 0, A: 0, B: 0 };
  const order = fifths >= 0 ? orderOfSharps : orderOfSharps.toReversed();
  for (let i = 0; i < Math.abs(fifths); i++) {
    const letter = order[i % 7];
    if (letter !== undefined) alters[letter] += Math.sign(fifths);
  }
  return alters;
}

/** Brings a signature within six sharps or flats by its enharmonic twin (common practice). `foldFifths(7)` → -5 */
export function foldFifths(fifths: number): number {
  const turned = modulo(fifths + 5, 12) - 5; // -5 to 6
  return turned === 6 && fifths < 0 ? -6 : turned;
}

/** The key an interval away, within six sharps or flats. E flat major, up a major second → F major */
export function transposeKey(key: Key, interval: Interval): Key {
  return fifthsToKey(foldFifths(keyFifths(key) + intervalFifths(interval)), key.mode);
}

/** `Bb major`, `C# minor` */
export function formatKey(key: Key): string {
  return `${formatPitchName(key.tonic)} ${key.mode}`;
}

/** Reads `Bb`, `Bb major`, `Am`, `A minor`; null when it is no key of at most seven sharps or flats. */
export function parseKey(text: string): Key | null {
  const match = /^([A-Ga-g][#b♭♯]?)\s*(major|minor|m|)$/.exec(text.trim());
  const tonic = match === null ? null : parsePitchName(match[1] ?? '');
  if (tonic === null) return null;
  const key: Key = { tonic, mode: match?.[2]?.startsWith('mi') || match?.[2] === 'm' ? 'minor' : 'major' };
  return Math.abs(keyFifths(key)) > 7 ? null : key;
}
