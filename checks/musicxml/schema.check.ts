// Source: MusicXML 4.0 schema, W3C Music Notation Community Group, June 2021; see README.md.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { listChordQualities, scoreToMusicXml } from '#music';
import { randomScore } from '../../src/music/score/random-score.contract.ts';
import { schemaFaults, unfilledVoices } from './schema.ts';

interface Data {
  readonly musicxml: { readonly valid_sample: string };
}
const data: Data = JSON.parse(readFileSync(new URL('./data/formats.json', import.meta.url), 'utf8'));
const sample = data.musicxml.valid_sample;

test('the judge accepts the valid sample and rejects the three broken ones', () => {
  const { valid_sample: valid } = data.musicxml;
  expect(schemaFaults(valid)).toEqual([]);
  const swapped = valid.replace(
    '<diatonic>-1</diatonic><chromatic>-2</chromatic>',
    '<chromatic>-2</chromatic><diatonic>-1</diatonic>',
  );
  expect(schemaFaults(swapped).join()).toContain('diatonic');
  expect(schemaFaults(valid.replace('<part id="P1">', '<part id="P2">')).join()).toContain('P2');
  expect(schemaFaults(valid.replace('>whole<', '>semibreve<')).join()).toContain('semibreve');
});

test('every kind of every chord quality is one of the schema', () => {
  for (const { kind } of listChordQualities()) {
    const harmony = `<harmony><root><root-step>C</root-step></root><kind>${kind}</kind></harmony><note>`;
    expect(schemaFaults(sample.replace('<note>', harmony))).toEqual([]);
  }
});

test('any sound score is written as valid MusicXML with full measures, the same every time', () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const xml = scoreToMusicXml(randomScore(seed));
      expect(schemaFaults(xml)).toEqual([]);
      expect(unfilledVoices(xml)).toEqual([]);
      expect(scoreToMusicXml(randomScore(seed))).toBe(xml);
    }),
    { numRuns: 200 },
  );
});
