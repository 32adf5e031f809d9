// The files of the starter library, read as the application reads them.

import { readdirSync, readFileSync } from 'node:fs';
import {
  createSkillMap,
  formatSkillMapFault,
  formatUnitFault,
  readSkillMapText,
  readUnitText,
  type Skill,
  type SkillMap,
  type UnitDocument,
} from '#planning';

const folder = new URL('../../library/', import.meta.url);

export interface StarterUnit {
  readonly name: string;
  readonly text: string;
  readonly unit: UnitDocument;
}

export const skillsText = readFileSync(new URL('skills.yaml', folder), 'utf8');
export const starterSkills: readonly Skill[] = readSkills();
export const starterMap: SkillMap = joinSkills();
export const starterUnits: readonly StarterUnit[] = readdirSync(new URL('units/', folder))
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map(readUnit);

/** The text of a file in `library/`. */
export function readLibraryFile(name: string): string {
  return readFileSync(new URL(name, folder), 'utf8');
}

function readSkills(): readonly Skill[] {
  const read = readSkillMapText(skillsText, 'yaml');
  if (!read.ok) throw new Error(`skills.yaml: ${read.error.map(formatUnitFault).join('\n')}`);
  return read.value;
}

function joinSkills(): SkillMap {
  const made = createSkillMap(starterSkills);
  if (!made.ok)
    throw new Error(made.error.map((fault) => formatSkillMapFault(fault, starterSkills)).join('\n'));
  return made.value;
}

function readUnit(name: string): StarterUnit {
  const text = readLibraryFile(`units/${name}`);
  const read = readUnitText(text, 'yaml');
  if (!read.ok) throw new Error(`${name}: ${read.error.map(formatUnitFault).join('\n')}`);
  return { name, text, unit: read.value.unit };
}
