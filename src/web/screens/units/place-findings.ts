// Where in the editor each finding belongs.

import { formatUnitFinding, type Skill, type SkillId, type UnitDocument, type UnitFinding } from '#planning';

/** `unit`, `skills`, `activities`, `checks`, `next`, `activity:` and its key, `check:` and its key. */
export type FindingPlace =
  | 'unit'
  | 'skills'
  | 'activities'
  | 'checks'
  | 'next'
  | `activity:${string}`
  | `check:${string}`;

/** The findings as sentences by place, each said once at each place. */
export function placeFindings(
  findings: readonly UnitFinding[],
  unit: UnitDocument,
  skillsById: ReadonlyMap<SkillId, Skill>,
): ReadonlyMap<FindingPlace, readonly string[]> {
  const placed = new Map<FindingPlace, readonly string[]>();
  for (const finding of findings) {
    const sentence = formatUnitFinding(finding, skillsById);
    for (const place of placesOf(finding, unit)) {
      const there = placed.get(place) ?? [];
      if (!there.includes(sentence)) placed.set(place, [...there, sentence]);
    }
  }
  return placed;
}

function placesOf(finding: UnitFinding, unit: UnitDocument): readonly FindingPlace[] {
  switch (finding.kind) {
    case 'NoActivities':
      return ['activities'];
    case 'NoChecks':
      return ['checks'];
    case 'UnknownSkill':
    case 'SkillNotListed':
      return placesNaming(finding.skill, finding.where, unit);
    case 'SkillUnused':
      return ['skills'];
    case 'CheckUndeveloped':
      return [`check:${finding.check}`];
    case 'DuplicateKey':
      return [finding.of === 'check' ? 'checks' : 'activities'];
    case 'NoSkills':
    case 'NoHowTo':
      return activitiesCalled(finding.title, unit);
    case 'OutOfOrder':
    case 'VariantUnreachable':
      return [`activity:${finding.activity.key}`];
    case 'NextIsItself':
      return ['next'];
  }
}

const activitiesCalled = (title: string, unit: UnitDocument): readonly FindingPlace[] =>
  [...unit.activities, ...unit.extensions]
    .filter((activity) => activity.title === title)
    .map((activity): FindingPlace => `activity:${activity.key}`);

// A finding names an activity by title and a check by key, so the two are told apart by who has the skill.
function placesNaming(skill: SkillId, where: string, unit: UnitDocument): readonly FindingPlace[] {
  const activities = [...unit.activities, ...unit.extensions].filter(
    (activity) => activity.title === where && activity.develops.includes(skill),
  );
  if (activities.length > 0) return activities.map((activity): FindingPlace => `activity:${activity.key}`);
  if (unit.checks.some((check) => check.key === where && check.skill === skill)) return [`check:${where}`];
  return ['skills'];
}
