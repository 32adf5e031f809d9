import { describe, expect, test } from 'vitest';
import { present } from '#core';
import { formatPitchName, parsePitchName, pitchClass } from '../pitch/pitch.ts';
import { spellScale } from '../scale/scale.ts';
import { chordTones, formatChord, guideTones, parseChord, voicingTones } from './chord.ts';
import { suggestScales } from './chord-scale.ts';
import { listChordQualities } from './quality.ts';

const chord = (symbol: string) => {
  const read = parseChord(symbol);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};
const house = (symbol: string) => formatChord(chord(symbol));

test.each([
  ['Cm7', ['C-7', 'Cmi7', 'Cmin7', 'C min7', 'Cminor7']],
  ['Cmaj7', ['CM7', 'CΔ', 'CΔ7', 'C△', 'Cma7', 'CMaj7']],
  ['Bm7b5', ['Bø', 'Bø7', 'Bm7♭5', 'B-7b5', 'Bmin7(b5)', 'Bm7-5']],
  ['C7alt', ['Calt', 'C7(alt)']],
  ['Cm(maj7)', ['CmM7', 'C-Δ7', 'C-Δ', 'Cminmaj7', 'Cmmaj7']],
  ['C6/9', ['C69', 'C6(9)']],
  ['F/A', ['F/A', 'FM/A', 'Fmaj/A']],
  ['Bb7#11', ['B♭7♯11', 'Bb7(#11)', 'Bb7+11']],
  ['C7sus4', ['C7sus', 'C7 sus4', 'C7(sus4)']],
  ['Cdim7', ['C°7', 'Co7']],
  ['C7#5', ['C+7', 'Caug7', 'C7+5']],
  ['Bbm6/9/Db', ['B♭-6/9/D♭']],
])('%s is written for %j', (written, spellings) => {
  for (const spelling of spellings) expect(house(spelling)).toBe(written);
});

test('major and minor sevenths differ by case only, and stay apart', () => {
  expect([house('CM7'), house('Cm7')]).toEqual(['Cmaj7', 'Cm7']);
});

test.each([
  ['Cmaj77', 'Cmaj7'],
  ['Dm7bb5', 'Dm7b5'],
  ['Gsuz4', 'Gsus4'],
])('%s is refused and %s offered', (symbol, nearest) => {
  expect(parseChord(symbol)).toMatchObject({ ok: false, error: { symbol, nearest } });
});

describe.each(listChordQualities().map((quality) => quality))('$id', (quality) => {
  test('its house style reads back on every root, and with a bass', () => {
    for (const root of ['C', 'F#', 'Bb', 'E']) {
      for (const bass of ['', '/G']) {
        expect(house(root + quality.suffix + bass)).toBe(root + quality.suffix + bass);
      }
    }
  });

  test('guide and voicing tones belong to the chord', () => {
    const c = { root: present(parsePitchName('Eb'), 'what the test names'), quality, bass: null };
    const tones = chordTones(c).map(formatPitchName);
    for (const name of [...guideTones(c), ...voicingTones(c)]) expect(tones).toContain(formatPitchName(name));
    expect(guideTones(c).length).toBeGreaterThan(0);
  });

  test('the first scale suggested holds every tone of the chord up to the seventh', () => {
    const c = { root: present(parsePitchName('C'), 'what the test names'), quality, bass: null };
    const scale = spellScale(c.root, present(suggestScales(quality.id)[0], 'what the test names')).map(
      pitchClass,
    );
    for (const [i, degree] of quality.degrees.entries()) {
      if (Number(degree.replace(/[b#]/g, '')) > 7) continue;
      expect(scale).toContain(pitchClass(present(chordTones(c)[i], 'what the test names')));
    }
  });
});
