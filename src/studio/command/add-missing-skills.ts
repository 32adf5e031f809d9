// A unit may name skills that are not in the map yet. They join it bare, so that the unit can be planned at once, and the
// teacher is told to describe them.

import type { Skill, SkillId, UnitDocument } from '#planning';
import { formatList } from '../sentence/amounts.ts';
import type { Desk } from './desk.ts';

/** Puts every skill that the document names and the map lacks. */
export async function addMissingSkills(desk: Desk, document: UnitDocument): Promise<void> {
  const named = new Set<SkillId>([
    ...document.skills,
    ...[...document.activities, ...document.extensions].flatMap((a) => a.develops),
    ...document.checks.map((c) => c.skill),
  ]);
  const added: Skill[] = [];
  for (const id of named) {
    if ((await desk.tx.get('skill', id)) !== null) continue;
    const skill: Skill = {
      id,
      title: titleOf(id),
      area: document.area,
      stage: document.stages[0] ?? 'beginner',
      // A skill that travels in a file must say something of itself.
      description: `Not described yet; “${document.title}” names it.`,
      restsOn: [],
      ongoing: false,
    };
    await desk.tx.put('skill', skill);
    added.push(skill);
  }
  if (added.length > 0)
    desk.notices.push(
      `New in the skill map, to be described there: ${formatList(added.map((s) => `“${s.title}”`))}.`,
    );
}

/** `skill:two-bar-answers` → `two bar answers` */
const titleOf = (id: SkillId) => id.slice('skill:'.length).replaceAll('-', ' ').trim() || 'unnamed skill';
