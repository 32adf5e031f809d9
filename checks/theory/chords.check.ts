// Sources: see README.md (standard theory, MusicXML 4.0 kind values; symbols common practice; tonal 6.4.2).
import { readFileSync } from 'node:fs';
import { Chord } from 'tonal';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  chordTones,
  findChordQuality,
  formatPitchName,
  parseChord,
  parsePitchName,
  pitchClass,
  suggestScales,
} from '#music';

interface Row {
  readonly symbols: readonly string[];
  readonly musicxml_kind: string;
  readonly musicxml_degrees: readonly (readonly [number, number, string])[];
  readonly spelled: Readonly<Record<string, readonly string[]>>;
}
interface Data {
  readonly chords: Readonly<Record<string, Row>>;
  readonly chord_scale: readonly { readonly chord: string; readonly scales: string }[];
}
const data: Data = JSON.parse(readFileSync(new URL('./data/chords.json', import.meta.url), 'utf8'));

describe.each(Object.entries(data.chords))('%s', (id, row) => {
  const quality = present(findChordQuality(id), id);

  test('is spelled on every root as in the table', () => {
    for (const [root, names] of Object.entries(row.spelled)) {
      const tones = chordTones({ root: present(parsePitchName(root), root), quality, bass: null });
      expect(tones.map(formatPitchName)).toEqual(names);
    }
  });

  test('all its symbols are read on every root', () => {
    for (const root of Object.keys(row.spelled)) {
      for (const symbol of row.symbols) {
        // A bare triangle is read as a major seventh: the table lists it twice and says that players differ.
        if (symbol === 'CΔ' && id === 'major') continue;
        const read = parseChord(root + symbol.slice(1));
        expect(read.ok && read.value.quality.id, root + symbol.slice(1)).toBe(id);
      }
    }
  });

  test('has the MusicXML kind and degrees of the table', () => {
    expect(quality.kind).toBe(row.musicxml_kind);
    expect(quality.kindDegrees.map((d) => [d.value, d.alter, d.type])).toEqual(row.musicxml_degrees);
  });
});

// The table and tonal differ in which fifths and elevenths these leave out: common practice knows both.
const openToReading = ['altered_dominant', 'dominant_13', 'minor_11', 'dominant_7_flat13'];

test('tonal hears the same notes in every symbol in house style that it knows', () => {
  let compared = 0;
  for (const id of Object.keys(data.chords)) {
    const quality = present(findChordQuality(id), id);
    if (openToReading.includes(id)) continue;
    const theirs = Chord.get(`C${quality.suffix}`).notes;
    if (theirs.length === 0) continue;
    compared++;
    const root = present(parsePitchName('C'), 'C');
    const classes = (names: readonly string[]) => names.map((n) => pitchClass(present(parsePitchName(n), n)));
    expect(chordTones({ root, quality, bass: null }).map(pitchClass).sort(), id).toEqual(
      classes(theirs).sort(),
    );
  }
  expect(compared).toBeGreaterThanOrEqual(25);
});

test('the first scale suggested is one of the table’s, where the table has the chord', () => {
  for (const { chord } of data.chord_scale) {
    const rows = data.chord_scale.filter((row) => row.chord === chord).map((row) => row.scales);
    const first = present(suggestScales(present(findChordQuality(chord), chord).id)[0], 'a suggestion');
    expect(rows.join(', ')).toContain(first);
  }
});
