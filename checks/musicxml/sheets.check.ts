// Source: MusicXML 4.0 schema, W3C Music Notation Community Group, June 2021; see README.md.
import { expect, test } from 'vitest';
import { chooseOne, createSeededRandom } from '#core';
import {
  createSheet,
  describeScore,
  listInstruments,
  type MaterialKind,
  materialKinds,
  parseMaterialSpec,
  scoreToMidi,
  scoreToMusicXml,
  stages,
} from '#music';
import { randomSpec } from '../../src/music/generate/random-spec.contract.ts';
import { schemaFaults, unfilledVoices } from './schema.ts';

/** Sheets made of `count` random specs of a kind for random students; refused ones are left out. */
function sheets(kind: MaterialKind, count: number) {
  return Array.from({ length: count }, (_, seed) => {
    const random = createSeededRandom(1000 + seed);
    const spec = parseMaterialSpec(randomSpec(random, kind));
    if (!spec.ok) throw new Error(spec.error.message);
    const instrument = chooseOne(random, listInstruments());
    return createSheet(spec.value, { instrument, stage: chooseOne(random, stages), age: null, seed });
  }).flatMap((sheet) => (sheet.ok ? [sheet.value] : []));
}

test.each(materialKinds)(
  'every %s sheet is valid MusicXML with full measures, plays and can be told',
  (kind) => {
    const made = sheets(kind, 40);
    expect(made.length).toBeGreaterThan(15);
    for (const { score, seed } of made) {
      const xml = scoreToMusicXml(score);
      expect(schemaFaults(xml), `seed ${seed}`).toEqual([]);
      expect(unfilledVoices(xml), `seed ${seed}`).toEqual([]);
      expect(scoreToMidi(score).length).toBeGreaterThan(40);
      expect(describeScore(score)).not.toMatch(/undefined|null|NaN/);
    }
  },
);
