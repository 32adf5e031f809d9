import { expect, test } from 'vitest';
import { writeUnitYaml } from '#planning';
import { id, openStudio, skills, unit } from '../testing/open-studio.contract.ts';
import { loadUnitFile } from './load-unit-file.ts';
import { previewUnits } from './preview-units.ts';

test('[R-UNIT-3] a unit file shows what is new, what is here, and what does not fit', async () => {
  const studio = await openStudio();
  const solo = { ...unit, id: id('unit', 'solo'), skills: [...unit.skills, id('skill', 'solo')] };
  const soloSkill = {
    id: id('skill', 'solo'),
    title: 'solo',
    area: 'improvisation' as const,
    stage: 'beginner' as const,
    description: 'plays alone',
    restsOn: [],
    ongoing: false,
  };
  const preview = (text: string) => studio.store.read((r) => previewUnits(r, text, 'yaml'));
  const shown = await preview(writeUnitYaml({ unit: solo, skills: [...skills, soloSkill] }));
  expect(shown.faults).toEqual([]);
  expect(shown.skills.map((s) => s.id)).toEqual(['skill:solo']);
  expect(shown.units[0]).toMatchObject({ known: null, document: { id: 'unit:solo' } });
  expect(shown.units[0]?.findings.join(' ')).toContain('solo');

  const own = await studio.store.read((r) => loadUnitFile(r, unit.id));
  if (own === null) throw new Error('the unit is here');
  expect((await preview(writeUnitYaml(own))).units[0]).toMatchObject({ known: 1 });
  expect((await preview('unit: {title: Nothing')).faults.length).toBeGreaterThan(0);
});
