// A chord symbol: root, quality, and the bass where it differs.

import { err, nearestWord, ok, type Result } from '#core';
import { type Interval, transposeName } from '../pitch/interval.ts';
import { formatPitchName, type PitchName, parsePitchName } from '../pitch/pitch.ts';
import { type ChordQuality, listChordQualities, parseQuality } from './quality.ts';

export interface Chord {
  readonly root: PitchName;
  readonly quality: ChordQuality;
  /** The bass of a slash chord; null when it is the root. */
  readonly bass: PitchName | null;
}

export interface ChordUnreadable {
  readonly kind: 'ChordUnreadable';
  readonly symbol: string;
  /** The readable symbol with the fewest edits. */
  readonly nearest: string;
  readonly message: string;
}

function unreadable(symbol: string): ChordUnreadable {
  const root = /^[A-Ga-g][b#♭♯]?/.exec(symbol)?.[0] ?? 'C';
  const rest = symbol.startsWith(root) ? symbol.slice(root.length) : symbol;
  const suffixes = listChordQualities().map((quality) => quality.suffix);
  const head = root.charAt(0).toUpperCase() + root.slice(1);
  const nearest = head + nearestWord(rest, suffixes);
  return {
    kind: 'ChordUnreadable',
    symbol,
    nearest,
    message: `“${symbol}” is no chord symbol we can read. The nearest is ${nearest}.`,
  };
}

/** Reads a chord symbol in any common spelling. `C-7`, `Cmi7`, `Cmin7` → C minor seventh; `F/A` has its bass. */
export function parseChord(symbol: string): Result<Chord, ChordUnreadable> {
  const text = symbol.trim();
  const match = /^([A-G](?:[b♭](?![b♭])|[#♯])?)(.*?)(?:\/([A-G][b#♭♯]?))?$/.exec(text);
  const root = match === null ? null : parsePitchName(match[1] ?? '');
  const quality = match === null ? null : parseQuality(match[2] ?? '');
  if (match === null || root === null || quality === null) return err(unreadable(text));
  return ok({ root, quality, bass: match[3] === undefined ? null : parsePitchName(match[3]) });
}

/** The symbol in house style. C minor seventh over B flat → `Cm7/Bb` */
export function formatChord(chord: Chord): string {
  const bass = chord.bass === null ? '' : `/${formatPitchName(chord.bass)}`;
  return formatPitchName(chord.root) + chord.quality.suffix + bass;
}

/** The chord's tones from the root up, spelled. D flat major seventh → D♭ F A♭ C */
export function chordTones(chord: Chord): readonly PitchName[] {
  return chord.quality.tones.map((tone) => transposeName(chord.root, tone));
}

/** The tone on one of these degree numbers, or null. `chordTone(G7, [3, 4])` → B */
export function chordTone(chord: Chord, numbers: readonly number[]): PitchName | null {
  const index = chord.quality.degrees.findIndex((d) => numbers.includes(Number(d.replace(/[b#]/g, ''))));
  const tone = chord.quality.tones[index];
  return tone === undefined ? null : transposeName(chord.root, tone);
}

/**
 * The tones that tell the chord: third (or what stands for it) and seventh (or sixth); the fifth where there is no
 * seventh. G7 → B F
 */
export function guideTones(chord: Chord): readonly PitchName[] {
  const third = chordTone(chord, [3, 4, 2]);
  const seventh = chordTone(chord, [7]) ?? chordTone(chord, [6]) ?? chordTone(chord, [5]);
  return [third, seventh].filter((name) => name !== null);
}

/** The tones of a voicing without root: guide tones first, then colour from the ninth up, then the fifth. */
export function voicingTones(chord: Chord): readonly PitchName[] {
  const guides = guideTones(chord);
  const colours = [9, 11, 13].map((n) => chordTone(chord, [n])).filter((name) => name !== null);
  const fifth = chordTone(chord, [5]);
  const names = [...guides, ...colours, ...(fifth === null ? [] : [fifth])].map(formatPitchName);
  return [...new Set(names)].map(parsePitchName).filter((name) => name !== null);
}

/** The chord an interval away. */
export function transposeChord(chord: Chord, interval: Interval): Chord {
  return {
    root: transposeName(chord.root, interval),
    quality: chord.quality,
    bass: chord.bass === null ? null : transposeName(chord.bass, interval),
  };
}
