import { expect, test } from 'vitest';
import { present } from '#core';
import { findInstrument } from '../instrument/instrument.ts';
import { parseBackingMaterial } from './backing-material.ts';
import { fitBacking } from './fit-backing.ts';

const moved = (instrument: string, key: string) => {
  const read = parseBackingMaterial({ kind: 'backing', chart: '| C | F | G7 | C |', key });
  const material = present(read.ok ? read.value : null, 'a material');
  return fitBacking(material, {
    instrument: present(findInstrument(instrument), instrument),
    stage: 'beginner',
    age: null,
    seed: 1,
  }).transpose;
};

// A beginner's first key is C as written on piano and B flat trumpet (common practice, no source): on the trumpet it sounds a tone lower.
test('the track goes to the key that lies best, as it sounds on the instrument', () => {
  expect(moved('piano', 'fit')).toBe(0);
  expect(moved('trumpet_bb', 'fit')).toBe(-2);
  expect(moved('trumpet_bb', 'as_typed')).toBe(0);
});
