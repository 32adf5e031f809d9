// Source: written keys of transposing instruments, computed on the line of fifths, common practice beyond six; see README.md.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  findInstrument,
  formatKey,
  invertDirection,
  keyFifths,
  parseKey,
  transposeKey,
  transpositionOf,
} from '#music';

type Row = Readonly<Record<string, string | number>>;
const rows: readonly Row[] = JSON.parse(
  readFileSync(new URL('./data/key-transposition.json', import.meta.url), 'utf8'),
).major_keys;

const players = {
  Bb_instrument: 'trumpet_bb',
  Eb_instrument: 'alto_sax',
  F_instrument: 'horn_f',
  A_instrument: 'clarinet_a',
};

test('twelve concert keys', () => expect(rows.length).toBe(12));

describe.each(Object.entries(players))('%s', (column, id) => {
  test.each(rows.map((row) => [String(row['concert']), row] as const))('concert %s', (concert, row) => {
    const up = invertDirection(transpositionOf(present(findInstrument(id), id)));
    const key = transposeKey(present(parseKey(concert), concert), up);
    expect(keyFifths(key)).toBe(row[`${column}_fifths`]);
    expect(formatKey(key)).toBe(`${row[column]} major`);
  });
});
