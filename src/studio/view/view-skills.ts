// The skill map, with the units that teach each skill.

import type { SkillMapView } from '#contract';
import { createSkillMap } from '#planning';
import type { Reader } from '../record/store.ts';

/** Skills in teaching order, each after all that it rests on. */
export async function viewSkills(reader: Reader): Promise<SkillMapView> {
  const skills = await reader.list('skill');
  const units = (await reader.list('unit', { orderBy: ['title'] })).filter((u) => !u.retired);
  const map = createSkillMap(skills);
  return {
    skills: (map.ok ? map.value.inOrder : skills).map((skill) => ({
      ...skill,
      taughtBy: units
        .filter((u) => u.document.activities.some((a) => a.develops.includes(skill.id)))
        .map((u) => ({ unit: u.id, title: u.title })),
    })),
  };
}
