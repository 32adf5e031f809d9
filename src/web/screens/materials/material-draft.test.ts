import { expect, it } from 'vitest';
import { parseMaterialSpec } from '#music';
import { readBackingAddress } from '../backing/backing-address.ts';
import { unit as exampleUnit } from '../units/draft.fixture.ts';
import { addMaterial } from './add-material.ts';
import { materialAddress } from './material-address.ts';
import { draftToQuery, draftToSpec, type MaterialDraft, newDraft, queryToDraft } from './material-draft.ts';

it('comes back from its address as it was', () => {
  const draft: MaterialDraft = {
    kind: 'line',
    fields: { chart: '| F#m7b5 | B7 & more? |', choruses: 2 },
    player: 'student:ada alto_sax',
    instrument: 'alto_sax',
    stage: 'beginner',
    age: 9,
    seed: 12,
  };
  expect(queryToDraft(draftToQuery(draft))).toEqual(draft);
  expect(queryToDraft(draftToQuery(newDraft))).toEqual(newDraft);
});

it.each(['', 'spec=%7B', 'spec=[]', 'spec={"kind":"poem"}', 'age=1.5&seed=x&instrument=kazoo&stage=divine'])(
  'is a new one where the address says nothing of use: %s',
  (query) => expect(queryToDraft(query)).toEqual(newDraft),
);

it('is a spec that can be read, for every kind', () => {
  for (const kind of ['scale', 'line', 'chart'] as const)
    expect(parseMaterialSpec(draftToSpec({ ...newDraft, kind })).ok, kind).toBe(true);
});

it('is kept on one activity under a key of its own', () => {
  const [activity] = exampleUnit.activities;
  if (activity === undefined) throw new Error('the example has activities');
  const once = addMaterial(exampleUnit, activity.key, {
    title: 'Scales in D',
    spec: { kind: 'scale' },
    seed: null,
  });
  const twice = addMaterial(once, activity.key, { title: 'Scales in D', spec: { kind: 'scale' }, seed: 4 });
  const kept = twice.activities[0]?.materials.slice(activity.materials.length);
  expect(kept).toEqual([
    { key: 'scales-in-d', title: 'Scales in D', spec: { kind: 'scale' } },
    { key: 'scales-in-d-2', title: 'Scales in D', spec: { kind: 'scale' }, seed: 4 },
  ]);
  expect(twice.activities.slice(1)).toEqual(exampleUnit.activities.slice(1));
});

it('is looked at on its own screen: notation among the materials, a backing at the band', () => {
  const backing = { kind: 'backing', chart: '| Dm7 | G7 |', tempo: 90 };
  const band = materialAddress(backing, { instrument: 'clarinet_bb', seed: 6 });
  expect(band.startsWith('/band?')).toBe(true);
  expect(readBackingAddress(band.slice('/band?'.length))).toMatchObject({
    fields: backing,
    seed: 6,
    reader: 'clarinet_bb',
  });
  expect(materialAddress({ kind: 'rhythm' })).toMatch(/^\/materials\?spec=/);
});
