import type { Skill, SkillId } from '../skill/skill.ts';
import type { UnitFinding } from './validate-unit.ts';

/** One finding as a sentence or two: what, where, how to mend. Skills are named by title where the map knows them. */
export function formatUnitFinding(
  finding: UnitFinding,
  skillsById: ReadonlyMap<SkillId, Skill> = new Map(),
): string {
  const name = (id: SkillId) => {
    const title = skillsById.get(id)?.title;
    return title === undefined ? id : `“${title}”`;
  };
  switch (finding.kind) {
    case 'NoActivities':
      return 'The unit has no activities, so nothing of it can be planned. Add one.';
    case 'NoChecks':
      return 'The unit has no checks, so it cannot be known when it is learnt. Add one for its main skill.';
    case 'UnknownSkill':
      return `“${finding.where}” names ${finding.skill}, which is not in the skill map. ${
        finding.nearest === null ? 'Add it to the map.' : `Did you mean ${finding.nearest}?`
      }`;
    case 'SkillNotListed':
      return `“${finding.where}” develops ${name(finding.skill)}, which the unit does not list. Add it to the unit's skills.`;
    case 'SkillUnused':
      return `The unit lists ${name(finding.skill)}, but no activity develops it and none rests on it. Remove it or give it an activity.`;
    case 'CheckUndeveloped':
      return `The check “${finding.check}” asks for ${name(finding.skill)}, which no activity develops.`;
    case 'DuplicateKey':
      return `The ${finding.of} key ${finding.key} is used twice. Rename one of the two.`;
    case 'NoSkills':
      return `The ${finding.of} “${finding.title}” develops no skill, so its progress cannot be seen. Name at least one.`;
    case 'NoHowTo':
      return `“${finding.title}” does not say how to teach it. Write a line or two.`;
    case 'OutOfOrder':
      return `“${finding.activity.title}” develops ${name(finding.skill)}, which rests on ${name(finding.restsOn)}; that is first developed later, in “${finding.developedBy.title}”. Put “${finding.developedBy.title}” first.`;
    case 'VariantUnreachable':
      return `Variant ${finding.variant + 1} of “${finding.activity.title}” is never used: ${whyUnreachable[finding.why]}.`;
    case 'NextIsItself':
      return 'The unit names itself as one that may follow. Remove it from next.';
  }
}

const whyUnreachable = {
  stage: 'none of its stages is one of the unit’s',
  age: 'its ages lie outside the unit’s',
  earlier: 'a variant before it fits everyone',
  empty: 'it changes nothing',
} as const;
