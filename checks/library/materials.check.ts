// Every material spec of the starter units makes its sheet for every instrument, at every stage and the ages of its unit.
import { describe, expect, test } from 'vitest';
import {
  arrange,
  backingToSpec,
  createSheet,
  findScoreFaults,
  fitBacking,
  listInstruments,
  parseBackingMaterial,
  parseMaterialSpec,
} from '#music';
import type { Activity, UnitDocument } from '#planning';
import { starterUnits } from './starter-library.ts';

/** An activity's materials and those of its variants, each with the stages it is for. */
function listMaterials(unit: UnitDocument, { materials, variants }: Activity) {
  return [
    ...materials.map((one) => ({ ...one, whom: '', stages: unit.stages })),
    ...variants.flatMap((variant) =>
      (variant.materials ?? []).map((one) => ({
        ...one,
        whom: `, ages from ${variant.ages?.from ?? unit.ages.from}, ${variant.stages ?? 'every stage'}`,
        stages: unit.stages.filter((stage) => variant.stages?.includes(stage) ?? true),
      })),
    ),
  ];
}

const every = starterUnits.flatMap(({ unit }) =>
  [...unit.activities, ...unit.extensions].flatMap((activity) =>
    listMaterials(unit, activity)
      .filter(({ spec }) => spec !== undefined)
      .map(({ key, spec, whom, stages }) => ({
        name: `${unit.id} ${activity.key} ${key}${whom}`,
        unit,
        stages,
        spec,
      })),
  ),
);

const isBacking = (spec: unknown) =>
  typeof spec === 'object' && spec !== null && 'kind' in spec && spec.kind === 'backing';
// Activities that need none of our tracks: the drone is the teacher, the student, or one of another key.
const fromElsewhere = new Set(['another-home', 'keep-the-floor', 'where-is-home', 'give-it-away']);
const specs = every.filter(({ spec }) => !isBacking(spec));
const tracks = every.filter(({ spec }) => isBacking(spec));

test.each(tracks)('$name is a track for everyone', ({ unit, stages, spec }) => {
  const read = parseBackingMaterial(spec);
  if (!read.ok) throw new Error(read.error.message);
  for (const instrument of listInstruments())
    for (const stage of stages) {
      const fitted = fitBacking(read.value, { instrument, stage, age: unit.ages.from, seed: 1 });
      const { bars } = arrange(backingToSpec(fitted), 1);
      expect(bars.some((bar) => bar.role === 'play')).toBe(true);
    }
});

// A teacher who opens the lesson finds what the how-to speaks of there, not two activities back.
test('every material makes something, and an activity over a drone, a backing or drums brings its track', () => {
  for (const { unit } of starterUnits)
    for (const activity of [...unit.activities, ...unit.extensions]) {
      const { key, howTo, materials } = activity;
      expect(
        listMaterials(unit, activity)
          .filter(({ spec }) => spec === undefined)
          .map(({ title }) => title),
        key,
      ).toEqual([]);
      if (/\b(?:the|a|soft|swung|drum) (?:drone|backing)\b/.test(howTo) && !fromElsewhere.has(key))
        expect(
          materials.some(({ spec }) => isBacking(spec)),
          `${unit.id} ${key}`,
        ).toBe(true);
    }
});

// Common practice, no source: what is learnt by ear is not handed out as a page before it is known.
test('what a how-to keeps from the eyes at first is not taken home at once', () => {
  const keepsBack = /take the page out|notes in the bag|instead of the notes|from the back of a book/;
  const held = starterUnits.flatMap(({ unit }) =>
    [...unit.activities, ...unit.extensions].flatMap(({ howTo, materials, variants }) =>
      [{ howTo, materials }, ...variants]
        .flatMap((one) =>
          (one.materials ?? []).map((material) => ({ ...material, howTo: one.howTo ?? howTo })),
        )
        .filter(({ title, howTo: said }) => keepsBack.test(said) || title.startsWith('For the teacher')),
    ),
  );
  expect(held.length).toBeGreaterThan(8);
  expect(held.filter(({ takeHome }) => takeHome === undefined)).toEqual([]);
});

test('six units bring the band', () => {
  expect(new Set(tracks.map(({ unit }) => unit.id)).size).toBe(6);
});

test('every unit brings notation', () => {
  expect(new Set(specs.map(({ unit }) => unit.id)).size).toBe(12);
});

describe.each(specs.map((one, place) => ({ ...one, place })))('$name', ({ unit, stages, spec, place }) => {
  test('is a sheet for everyone', () => {
    const read = parseMaterialSpec(spec);
    if (!read.ok) throw new Error(read.error.message);
    // A third of the instruments for each spec, all of them over the specs; the whole table passes too, in minutes.
    const instruments = listInstruments().filter((_, i) => (i + place) % 3 === 0);
    for (const [i, instrument] of instruments.entries())
      for (const stage of stages) {
        const age = i % 2 === 0 ? unit.ages.from : null;
        const sheet = createSheet(read.value, { instrument, stage, age, seed: 1 });
        const who = `${instrument.id} ${stage} ${age}`;
        expect(sheet.ok ? '' : sheet.error.message, who).toBe('');
        if (sheet.ok) expect(findScoreFaults(sheet.value.score), who).toEqual([]);
      }
  });
});
