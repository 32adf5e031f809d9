import { expect, test } from 'vitest';
import { readInstruments } from './read-instruments.ts';

const said = (cell: string) => {
  const read = readInstruments(cell, 30);
  return read.ok ? read.value : read.error;
};

test('several recorders by their names', () => {
  expect(said('Tenor recorder, treble recorder')).toEqual(['recorder_tenor', 'recorder_treble']);
  expect(said('Tenorblockflöte')).toEqual(['recorder_tenor']);
});

test('what is not known is told with what shares a word with it', () => {
  expect(said('bass recorder')).toBe(
    '“bass recorder” is no instrument we know. Near to it: “Recorder, descant (soprano)”, “Recorder, treble (alto)”, “Recorder, tenor”. Write one of these, or leave the cell empty and choose it later.',
  );
  expect(said('theremin')).toMatch(/^“theremin” is no instrument we know\. Write it in full, such as/);
});

test('a word that may mean several is asked about, also where a voice bears it as its name', () => {
  expect(said('Bass')).toBe('“bass” may mean several. Write which: double bass, bass guitar or bass voice.');
  expect(said('baritone')).toMatch(/may mean several/);
  for (const [word, instrument] of [
    ['bass voice', 'voice_bass'],
    ['baritone voice', 'voice_baritone'],
    ['alto voice', 'voice_alto'],
  ] as const)
    expect(said(word)).toEqual([instrument]);
});

// The usual short forms of scores and lists; from memory.
test.each([
  ['Vln', 'violin'],
  ['vla.', 'viola'],
  ['Vc', 'cello'],
  ['Pno', 'piano'],
  ['Tpt', 'trumpet_bb'],
] as const)('the short form %s', (word, instrument) => {
  expect(said(word)).toEqual([instrument]);
});
