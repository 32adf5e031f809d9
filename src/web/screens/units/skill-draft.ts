// A skill as it is being written, and what keeps the map from taking it.

import {
  type Area,
  createSkillMap,
  formatSkillMapFault,
  type Skill,
  type SkillId,
  type Stage,
} from '#planning';
import { words } from '../../words/index.ts';
import { toLine, toProse } from './draft-to-document.ts';
import { titleToSkillId } from './slug.ts';

export interface SkillDraft {
  readonly title: string;
  readonly area: Area;
  readonly stage: Stage;
  readonly description: string;
  readonly restsOn: readonly SkillId[];
  readonly ongoing: boolean;
}
export type SkillFaults = Partial<Record<'title' | 'description' | 'restsOn', string>>;

const says = words.units.skills.form;

/** The skill as the map would hold it; a new one gets an id from its title. */
export function draftToSkill(draft: SkillDraft, known: Skill | null, skills: readonly Skill[]): Skill {
  const title = toLine(draft.title);
  return {
    id: known?.id ?? titleToSkillId(title, new Set(skills.map((skill) => skill.id))),
    title,
    area: draft.area,
    stage: draft.stage,
    // A skill file wants a description, so that one without may still be kept as a file and read again.
    description: toProse(draft.description) || title,
    restsOn: draft.restsOn,
    ongoing: draft.ongoing,
  };
}

/** What must be mended first; a ring is named skill by skill. */
export function findSkillFaults(
  draft: SkillDraft,
  known: Skill | null,
  skills: readonly Skill[],
): SkillFaults {
  const skill = draftToSkill(draft, known, skills);
  const others = skills.filter((one) => one.id !== skill.id);
  const faults: SkillFaults = {};
  const twin = others.some((one) => one.title.toLowerCase() === skill.title.toLowerCase());
  if (skill.title === '') faults.title = says.titleMissing;
  else if (skill.title.length > 120) faults.title = says.tooLong(120);
  else if (twin) faults.title = says.titleTwin;
  if (skill.description.length > 600) faults.description = says.tooLong(600);
  if (skill.restsOn.length > 12) faults.restsOn = says.tooMany(12);
  const all = [...others, skill];
  const map = createSkillMap(all);
  if (!map.ok) {
    const [ring] = map.error.filter((fault) => fault.kind === 'SkillCycle');
    if (ring) faults.restsOn = formatSkillMapFault(ring, all);
  }
  return faults;
}
