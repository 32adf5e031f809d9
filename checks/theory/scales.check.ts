// Sources: see README.md (standard theory, compared with music21 10.5; tonal 6.4.2).
import { readFileSync } from 'node:fs';
import { Note, Scale } from 'tonal';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import { findScale, formatPitchName, parsePitchName, pitchClass, spellScale } from '#music';

interface Data {
  readonly scales: Readonly<
    Record<
      string,
      {
        readonly names: readonly string[];
        readonly semitones: readonly number[];
        readonly spelled: Readonly<Record<string, readonly string[]>>;
      }
    >
  >;
}
const data: Data = JSON.parse(readFileSync(new URL('./data/scales.json', import.meta.url), 'utf8'));
const rows = Object.entries(data.scales).flatMap(([id, scale]) =>
  Object.entries(scale.spelled).map(([tonic, names]) => ({ id, tonic, names, semitones: scale.semitones })),
);
const name = (text: string) => present(parsePitchName(text), 'a note name');
const idOf = (id: string) => present(findScale(id), id).id;

test('all 24 scales of the table are known', () => {
  expect(Object.keys(data.scales).filter((id) => findScale(id) === null)).toEqual([]);
  expect(rows.filter((row) => row.names.length === 7).length).toBeGreaterThanOrEqual(135);
});

describe.each(rows)('$tonic $id', ({ id, tonic, names, semitones }) => {
  const spelled = spellScale(name(tonic), idOf(id));

  test('is spelled as in the table', () => {
    if (names.length === 7) expect(spelled.map(formatPitchName)).toEqual(names);
    else expect(spelled.map(pitchClass)).toEqual(names.map((n) => pitchClass(name(n))));
  });

  test('has the semitones of the table', () => {
    const root = pitchClass(name(tonic));
    expect(spelled.map((n) => (pitchClass(n) - root + 12) % 12)).toEqual(semitones);
  });
});

// tonal's own names of the scales it shares with the table.
const tonalNames: Readonly<Record<string, string>> = {
  major: 'major',
  natural_minor: 'minor',
  harmonic_minor: 'harmonic minor',
  melodic_minor: 'melodic minor',
  dorian: 'dorian',
  phrygian: 'phrygian',
  lydian: 'lydian',
  mixolydian: 'mixolydian',
  locrian: 'locrian',
  major_pentatonic: 'major pentatonic',
  minor_pentatonic: 'minor pentatonic',
  altered: 'altered',
  lydian_dominant: 'lydian dominant',
  phrygian_dominant: 'phrygian dominant',
  lydian_augmented: 'lydian augmented',
};

test.each(Object.entries(tonalNames))('%s sounds as tonal has it, on every tonic', (id, other) => {
  for (const tonic of ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'F', 'Bb', 'Eb', 'Ab', 'Db']) {
    const theirs = Scale.get(`${tonic} ${other}`).notes.map((n) => Note.chroma(n));
    expect(theirs.length).toBeGreaterThan(4);
    expect(spellScale(name(tonic), idOf(id)).map(pitchClass)).toEqual(theirs);
  }
});

test('modes share the notes of their parents; two whole-tone and three diminished collections', () => {
  const classes = (tonic: string, id: string) =>
    [...new Set(spellScale(name(tonic), idOf(id)).map(pitchClass))].sort((a, b) => a - b).join(' ');
  expect(classes('G', 'altered')).toBe(classes('Ab', 'melodic_minor'));
  expect(classes('G', 'lydian_dominant')).toBe(classes('D', 'melodic_minor'));
  const all = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'];
  expect(new Set(all.map((t) => classes(t, 'whole_tone'))).size).toBe(2);
  expect(new Set(all.map((t) => classes(t, 'diminished_whole_half'))).size).toBe(3);
  expect(new Set(all.map((t) => classes(t, 'diminished_half_whole'))).size).toBe(3);
});
