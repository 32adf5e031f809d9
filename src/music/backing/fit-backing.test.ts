import { expect, test } from 'vitest';
import { present } from '#core';
import { findInstrument } from '../instrument/instrument.ts';
import { backingToSpec, parseBackingMaterial } from './backing-material.ts';
import { fitBacking } from './fit-backing.ts';

const fitted = (instrument: string, fields: Readonly<Record<string, unknown>>) => {
  const read = parseBackingMaterial({ kind: 'backing', chart: '| C | F | G7 | C |', ...fields });
  const material = present(read.ok ? read.value : null, 'a material');
  return fitBacking(material, {
    instrument: present(findInstrument(instrument), instrument),
    stage: 'beginner',
    age: null,
    seed: 1,
  });
};
const moved = (instrument: string, key: string) => fitted(instrument, { key }).transpose;

// A beginner's first key is C as written on piano and B flat trumpet (common practice, no source): on the trumpet it sounds a tone lower.
test('the track goes to the key that lies best, as it sounds on the instrument', () => {
  expect(moved('piano', 'fit')).toBe(0);
  expect(moved('trumpet_bb', 'fit')).toBe(-2);
  expect(moved('trumpet_bb', 'as_typed')).toBe(0);
});

test('a tone held on the tonic goes along to the student’s key', () => {
  const drone = (instrument: string) =>
    present(backingToSpec(fitted(instrument, { key: 'fit', drone: 'tonic' })).drone, 'a held tone') % 12;
  expect(drone('piano')).toBe(0); // C
  expect(drone('trumpet_bb')).toBe(10); // B flat, read as C
});
