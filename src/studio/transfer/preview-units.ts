// Looks at a unit file before anything of it is saved: what it holds, what is here already, what does not fit the map.

import type { UnitImportPreview } from '#contract';
import {
  formatUnitFault,
  formatUnitFinding,
  readUnitText,
  type Skill,
  type SkillId,
  type TextFormat,
  validateUnit,
} from '#planning';
import type { Reader } from '../record/store.ts';

/** The preview of one file; its faults are sentences, and then there is nothing to import. */
export async function previewUnits(
  reader: Reader,
  text: string,
  form: TextFormat,
): Promise<UnitImportPreview> {
  const file = readUnitText(text, form);
  if (!file.ok) return { units: [], skills: [], faults: file.error.map(formatUnitFault) };
  const { unit, skills } = file.value;
  const here = new Map<SkillId, Skill>((await reader.list('skill')).map((s) => [s.id, s]));
  const together = new Map([...skills.map((s) => [s.id, s] as const), ...here]); // the studio's own skills win
  const known = await reader.get('unit', unit.id);
  return {
    units: [
      {
        document: unit,
        known: known?.version ?? null,
        findings: validateUnit(unit, together).map((f) => formatUnitFinding(f, together)),
      },
    ],
    skills: skills.filter((s) => !here.has(s.id)),
    faults: [],
  };
}
