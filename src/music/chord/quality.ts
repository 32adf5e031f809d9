// Chord qualities: what a chord is made of, apart from its root.

import { present } from '#core';
import { degreeToInterval, type Interval } from '../pitch/interval.ts';
import { chordTable } from './chord.data.ts';

export type ChordQualityId = (typeof chordTable)[number]['id'];

/** One tone a `<harmony>` changes or adds beyond its kind. */
export interface KindDegree {
  readonly value: number;
  readonly alter: number;
  readonly type: 'add' | 'alter';
}

export interface ChordQuality {
  readonly id: ChordQualityId;
  /** What follows the root in our house style; empty for a major triad. */
  readonly suffix: string;
  /** Scale degrees, the root first: `1`, `b3`, `5`. */
  readonly degrees: readonly string[];
  readonly tones: readonly Interval[];
  /** MusicXML `kind-value`. */
  readonly kind: string;
  readonly kindDegrees: readonly KindDegree[];
}

const qualities: readonly ChordQuality[] = chordTable.map((row) => ({
  id: row.id,
  suffix: row.suffix,
  degrees: row.degrees.split(' '),
  tones: row.degrees.split(' ').map(degreeToInterval),
  kind: row.kind,
  kindDegrees: row.kindDegrees.map(([value, alter, type]) => ({ value, alter, type })),
}));
const qualitiesById = new Map<string, ChordQuality>(qualities.map((quality) => [quality.id, quality]));

/** All 33 qualities. */
export function listChordQualities(): readonly ChordQuality[] {
  return qualities;
}

/** The quality with this id, or null. */
export function findChordQuality(id: string): ChordQuality | null {
  return qualitiesById.get(id) ?? null;
}

/** The quality with this id, which the type already promises. */
export function qualityOf(id: ChordQualityId): ChordQuality {
  return present(qualitiesById.get(id), 'the quality of a known id');
}

/**
 * One spelling for all that mean the same: words for minor become `m`, for major `M`, diminished `o`, augmented `+`;
 * a bare triangle is a major seventh; brackets go; `-5` and `+9` after a figure are `b5` and `#9`.
 */
function canonicalSuffix(suffix: string): string {
  return suffix
    .replace(/[()\s,[\]]/g, '')
    .replaceAll('♭', 'b')
    .replaceAll('♯', '#')
    .replace(/[△∆Δ](?=6|7|9|11|13)/g, 'M')
    .replace(/[△∆Δ]/g, 'M7')
    .replace(/major|Major|maj|Maj|MAJ|ma|Ma/g, 'M')
    .replace(/^(minor|min|mi|Min|MIN|Mi|-)/, 'm')
    .replace(/diminished|dim|[°º]/g, 'o')
    .replace(/augmented|aug/g, '+')
    .replace(/Ø/g, 'ø')
    .replace(/(\d)-(\d)/g, '$1b$2')
    .replace(/([\dM])\+(\d)/g, '$1#$2')
    .replace(/\//g, '')
    .replace(/sus$/, 'sus4');
}

const extraSpellings: readonly (readonly [string, ChordQualityId])[] = [
  ['M', 'major'],
  ['ø', 'half_diminished'],
  ['ø7', 'half_diminished'],
  ['+7', 'augmented_7'],
  ['+M7', 'augmented_major_7'],
  ['M6', 'major_6'],
  ['M69', 'six_nine'],
  ['6add9', 'six_nine'],
  ['m6add9', 'minor_six_nine'],
  ['sus4add7', 'dominant_7_sus4'],
  ['add2', 'add9'],
  ['2', 'sus2'],
  ['4', 'sus4'],
  ['alt', 'altered_dominant'],
];
const idsBySuffix = new Map<string, ChordQualityId>([
  ...qualities.map((quality) => [canonicalSuffix(quality.suffix), quality.id] as const),
  ...extraSpellings,
]);

/** The quality a suffix names, in any common spelling; null when none. `-7`, `mi7`, `min7` → minor_7 */
export function parseQuality(suffix: string): ChordQuality | null {
  const id = idsBySuffix.get(canonicalSuffix(suffix));
  return id === undefined ? null : qualityOf(id);
}
