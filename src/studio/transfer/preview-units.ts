// What a file of units or skills would bring into the library, before anything is saved.

import type { UnitImportPreview } from '#contract';
import {
  createSkillMap,
  formatSkillMapFault,
  formatUnitFault,
  formatUnitFinding,
  readSkillMapText,
  readUnitText,
  type Skill,
  type TextFormat,
  type UnitDocument,
  validateUnit,
} from '#planning';
import type { Reader } from '../record/store.ts';

/** Reads a unit file, or a skill map alone. Faults are sentences; with faults there is nothing to import. */
export async function previewUnits(
  reader: Reader,
  text: string,
  form: TextFormat,
): Promise<UnitImportPreview> {
  const unitFile = readUnitText(text, form);
  if (unitFile.ok) return preview(reader, [unitFile.value.unit], unitFile.value.skills);
  const skillMap = readSkillMapText(text, form);
  if (skillMap.ok) return preview(reader, [], skillMap.value);
  return { units: [], skills: [], faults: unitFile.error.map(formatUnitFault) };
}

async function preview(
  reader: Reader,
  units: readonly UnitDocument[],
  skills: readonly Skill[],
): Promise<UnitImportPreview> {
  const mine = await reader.list('skill');
  const known = new Set(mine.map((s) => s.id));
  const merged = [...mine, ...skills.filter((s) => !known.has(s.id))];
  const map = createSkillMap(merged);
  const skillsById = new Map(merged.map((s) => [s.id, s]));
  const rows: UnitImportPreview['units'][number][] = [];
  for (const document of units)
    rows.push({
      document,
      known: (await reader.get('unit', document.id))?.version ?? null,
      findings: validateUnit(document, skillsById).map((f) => formatUnitFinding(f, skillsById)),
    });
  return {
    units: rows,
    skills: skills.filter((s) => !known.has(s.id)),
    faults: map.ok ? [] : map.error.map((f) => formatSkillMapFault(f, merged)),
  };
}
