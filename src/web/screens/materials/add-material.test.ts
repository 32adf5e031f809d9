import { expect, test } from 'vitest';
import { unit } from '../units/draft.fixture.ts';
import { addMaterial } from './add-material.ts';

test('a material is kept for everyone: a variant with materials of its own gets it too', () => {
  const kept = addMaterial(unit, 'walk', { title: 'Short steps at 100', spec: { tempo: 100 }, seed: null });
  const [walk, read] = kept.activities;
  expect(walk?.materials.map((one) => one.key)).toEqual(['steps', 'short-steps-at-100']);
  expect(walk?.variants[0]?.materials?.map((one) => one.key)).toEqual(['short-steps', 'short-steps-at-100']);
  expect(read).toEqual(unit.activities[1]);
});
