// A unit as it travels alone: the library's newest copy, the skills it names, and every skill those rest on.

import type { Skill, SkillId, UnitFile, UnitId } from '#planning';
import type { Reader } from '../record/store.ts';

/** The file form of a unit, or null when there is no such unit. */
export async function loadUnitFile(reader: Reader, id: UnitId): Promise<UnitFile | null> {
  const unit = await reader.get('unit', id);
  if (unit === null) return null;
  const skills = await reader.list('skill');
  const byId = new Map<SkillId, Skill>(skills.map((s) => [s.id, s]));
  const wanted = new Set<SkillId>();
  const visit = (skill: SkillId): void => {
    if (wanted.has(skill)) return;
    wanted.add(skill);
    byId.get(skill)?.restsOn.forEach(visit);
  };
  unit.document.skills.forEach(visit);
  return { unit: unit.document, skills: skills.filter((s) => wanted.has(s.id)) };
}
