import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { createSeededRandom } from '#core';
import { materialJsonSchema, materialKinds, parseBackingMaterial, parseMaterialSpec } from '#music';
import { randomSpec } from '../../src/music/generate/random-spec.contract.ts';
import { readLibraryFile } from './starter-library.ts';

// Judge: Ajv, an independent reader of JSON Schema (draft 2020-12).
const accepts = new Ajv2020({ strict: true, allErrors: true, strictTypes: false }).compile(
  JSON.parse(readLibraryFile('schema/material.schema.json')),
);

test('the published schema is current (else run tools/schema.ts)', () => {
  expect(JSON.parse(readLibraryFile('schema/material.schema.json'))).toEqual(materialJsonSchema());
});

test.each(materialKinds)('accepts what reading accepts: %s', (kind) => {
  for (let seed = 0; seed < 200; seed++) {
    const typed = randomSpec(createSeededRandom(seed), kind);
    expect(accepts(typed), `seed ${seed} ${JSON.stringify(accepts.errors?.[0])}`).toBe(true);
    const read = parseMaterialSpec(typed);
    expect(read.ok).toBe(true);
    if (read.ok)
      expect(accepts(JSON.parse(JSON.stringify(read.value))), `seed ${seed}, defaults filled`).toBe(true);
  }
});

test.each([
  {},
  { kind: 'scales' },
  { kind: 'scale', octaves: 9 },
  { kind: 'scale', octave: 2 },
  { kind: 'scale', scale: 'dorain' },
  { kind: 'scale', start: 'H' },
  { kind: 'scale', fingerings: 'yes' },
  { kind: 'rhythm', rests: 0.9 },
  { kind: 'rhythm', values: [] },
  { kind: 'phrase', play: [2, 12] },
  { kind: 'line' },
  { kind: 'chart', chart: 7 },
])('refuses %j, as reading does', (typed) => {
  expect(accepts(typed)).toBe(false);
  expect(parseMaterialSpec(typed).ok).toBe(false);
});

test.each([
  { kind: 'backing', chart: '| Dm7 G7 | C |' },
  { kind: 'backing', chart: '| C |', keys: [0, 5, -2], swing: 1.5, drone: 'Bb', tempoLimit: 200 },
])('accepts a backing track, as reading does: %j', (typed) => {
  expect(accepts(typed)).toBe(true);
  const read = parseBackingMaterial(typed);
  expect(read.ok && accepts(JSON.parse(JSON.stringify(read.value)))).toBe(true);
});

test.each([
  { kind: 'backing' },
  { kind: 'backing', chart: '| C |', tempo: 500 },
  { kind: 'backing', chart: '| C |', keys: [] },
  { kind: 'backing', chart: '| C |', feel: 'swinging' },
])('refuses a backing track, as reading does: %j', (typed) => {
  expect(accepts(typed)).toBe(false);
  expect(parseBackingMaterial(typed).ok).toBe(false);
});
