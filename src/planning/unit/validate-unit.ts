// What only shows when a unit is held against the skill map and against itself. None of it stops a unit from being used;
// each finding is a slip that would surprise the teacher later.

import { nearWord } from '#core';
import type { Skill, SkillId } from '../skill/skill.ts';
import type { Activity, ActivityKey, UnitDocument } from './unit.ts';

export interface NamedActivity {
  readonly key: ActivityKey;
  readonly title: string;
}

export type UnitFinding =
  | { readonly kind: 'NoActivities' }
  | { readonly kind: 'NoChecks' }
  | {
      readonly kind: 'UnknownSkill';
      readonly skill: SkillId;
      /** An activity's title, a check's key, or `skills`. */
      readonly where: string;
      readonly nearest: SkillId | null;
    }
  | { readonly kind: 'SkillNotListed'; readonly skill: SkillId; readonly where: string }
  | { readonly kind: 'SkillUnused'; readonly skill: SkillId }
  | { readonly kind: 'CheckUndeveloped'; readonly check: string; readonly skill: SkillId }
  | { readonly kind: 'DuplicateKey'; readonly of: 'activity' | 'check' | 'material'; readonly key: string }
  | { readonly kind: 'NoSkills'; readonly of: 'activity' | 'extension'; readonly title: string }
  | { readonly kind: 'NoHowTo'; readonly title: string }
  | {
      readonly kind: 'OutOfOrder';
      readonly activity: NamedActivity;
      readonly skill: SkillId;
      readonly restsOn: SkillId;
      /** The activity, later in the unit, that first develops `restsOn`. */
      readonly developedBy: NamedActivity;
    }
  | {
      readonly kind: 'VariantUnreachable';
      readonly activity: NamedActivity;
      /** From 0. */
      readonly variant: number;
      readonly why: 'stage' | 'age' | 'earlier' | 'empty';
    }
  | { readonly kind: 'NextIsItself' };

/** All findings, in the order of the unit. Skills are those of the map the unit will live in. */
export function validateUnit(
  unit: UnitDocument,
  skillsById: ReadonlyMap<SkillId, Skill>,
): readonly UnitFinding[] {
  const all = [...unit.activities, ...unit.extensions];
  return [
    ...(unit.activities.length === 0 ? [{ kind: 'NoActivities' } as const] : []),
    ...findUnknownSkills(unit, skillsById),
    ...findUnlisted(unit, all),
    ...findUnused(unit, all, skillsById),
    ...findDuplicates(unit, all),
    ...unit.activities.flatMap((activity) => findThin(activity, 'activity')),
    ...unit.extensions.flatMap((activity) => findThin(activity, 'extension')),
    ...findOutOfOrder(all, skillsById),
    ...all.flatMap((activity) => findUnreachableVariants(unit, activity)),
    ...(unit.checks.length === 0 ? [{ kind: 'NoChecks' } as const] : []),
    ...findUndevelopedChecks(unit, all, skillsById),
    ...(unit.next.includes(unit.id) ? [{ kind: 'NextIsItself' } as const] : []),
  ];
}

function findUnknownSkills(
  unit: UnitDocument,
  skillsById: ReadonlyMap<SkillId, Skill>,
): readonly UnitFinding[] {
  const named: (readonly [SkillId, string])[] = [
    ...unit.skills.map((skill) => [skill, 'skills'] as const),
    ...[...unit.activities, ...unit.extensions].flatMap((activity) =>
      activity.develops.map((skill) => [skill, activity.title] as const),
    ),
    ...unit.checks.map((check) => [check.skill, check.key] as const),
  ];
  return named
    .filter(([skill]) => !skillsById.has(skill))
    .map(([skill, where]) => ({
      kind: 'UnknownSkill',
      skill,
      where,
      nearest: nearWord(skill, skillsById.keys()),
    }));
}

function findUnlisted(unit: UnitDocument, all: readonly Activity[]): readonly UnitFinding[] {
  return all.flatMap((activity) =>
    activity.develops
      .filter((skill) => !unit.skills.includes(skill))
      .map((skill) => ({ kind: 'SkillNotListed', skill, where: activity.title }) as const),
  );
}

function findUnused(
  unit: UnitDocument,
  all: readonly Activity[],
  skillsById: ReadonlyMap<SkillId, Skill>,
): readonly UnitFinding[] {
  const used = new Set(all.flatMap((activity) => activity.develops));
  // A skill that a developed one rests on is involved though not developed here.
  for (const skill of used) for (const needed of skillsById.get(skill)?.restsOn ?? []) used.add(needed);
  return unit.skills
    .filter((skill) => skillsById.get(skill)?.ongoing === false && !used.has(skill))
    .map((skill) => ({ kind: 'SkillUnused', skill }));
}

function findDuplicates(unit: UnitDocument, all: readonly Activity[]): readonly UnitFinding[] {
  const repeated = (of: 'activity' | 'check' | 'material', keys: readonly string[]): readonly UnitFinding[] =>
    [...new Set(keys.filter((key, i) => keys.indexOf(key) !== i))].map((key) => ({
      kind: 'DuplicateKey',
      of,
      key,
    }));
  return [
    ...repeated(
      'activity',
      all.map((activity) => activity.key),
    ),
    ...repeated(
      'check',
      unit.checks.map((check) => check.key),
    ),
    // The same material may serve several activities, or an activity and its variants; twice in one of them is a slip.
    ...all
      .flatMap((activity) => [activity.materials, ...activity.variants.map((one) => one.materials ?? [])])
      .flatMap((materials) =>
        repeated(
          'material',
          materials.map((material) => material.key),
        ),
      ),
  ];
}

function findThin(activity: Activity, of: 'activity' | 'extension'): readonly UnitFinding[] {
  const findings: UnitFinding[] = [];
  if (activity.develops.length === 0) findings.push({ kind: 'NoSkills', of, title: activity.title });
  if (activity.howTo === '') findings.push({ kind: 'NoHowTo', title: activity.title });
  return findings;
}

function findOutOfOrder(
  all: readonly Activity[],
  skillsById: ReadonlyMap<SkillId, Skill>,
): readonly UnitFinding[] {
  const firstAt = new Map<SkillId, number>();
  all.forEach((activity, i) => {
    for (const skill of activity.develops) if (!firstAt.has(skill)) firstAt.set(skill, i);
  });
  const findings: UnitFinding[] = [];
  all.forEach((activity, i) => {
    for (const skill of activity.develops) {
      const needed = new Set(skillsById.get(skill)?.restsOn ?? []);
      for (const restsOn of needed) {
        for (const deeper of skillsById.get(restsOn)?.restsOn ?? []) needed.add(deeper);
        const developedBy = all[firstAt.get(restsOn) ?? -1];
        if (developedBy !== undefined && (firstAt.get(restsOn) ?? -1) > i)
          findings.push({
            kind: 'OutOfOrder',
            activity: nameOf(activity),
            skill,
            restsOn,
            developedBy: nameOf(developedBy),
          });
      }
    }
  });
  return findings;
}

function findUnreachableVariants(unit: UnitDocument, activity: Activity): readonly UnitFinding[] {
  const findings: UnitFinding[] = [];
  let fitsAll = false;
  activity.variants.forEach((variant, i) => {
    const { stages, ages, ...changes } = variant;
    const found = (why: 'stage' | 'age' | 'earlier' | 'empty') =>
      findings.push({ kind: 'VariantUnreachable', activity: nameOf(activity), variant: i, why });
    if (fitsAll) found('earlier');
    else if (stages !== undefined && !stages.some((stage) => unit.stages.includes(stage))) found('stage');
    else if (ages !== undefined && (ages.to < unit.ages.from || ages.from > unit.ages.to)) found('age');
    else if (Object.keys(changes).length === 0) found('empty');
    if (stages === undefined && ages === undefined) fitsAll = true;
  });
  return findings;
}

function findUndevelopedChecks(
  unit: UnitDocument,
  all: readonly Activity[],
  skillsById: ReadonlyMap<SkillId, Skill>,
): readonly UnitFinding[] {
  const developed = new Set(all.flatMap((activity) => activity.develops));
  return unit.checks
    .filter(({ skill }) => !developed.has(skill) && skillsById.get(skill)?.ongoing !== true)
    .map(({ key, skill }) => ({ kind: 'CheckUndeveloped', check: key, skill }));
}

function nameOf({ key, title }: Activity): NamedActivity {
  return { key, title };
}
