// The studio's skills joined by what they rest on: a directed graph without cycles. Order is Kahn's (1962), with ties
// broken by the order of the list, so the same list always gives the same order.

import { err, nearWord, ok, type Result } from '#core';
import type { Skill, SkillId } from './skill.ts';

export type SkillMapFault =
  | { readonly kind: 'DuplicateSkill'; readonly skill: SkillId }
  | {
      readonly kind: 'UnknownPrerequisite';
      readonly skill: SkillId;
      readonly restsOn: SkillId;
      readonly nearest: SkillId | null;
    }
  /** Each rests on the next, and the last is the first again. */
  | { readonly kind: 'SkillCycle'; readonly cycle: readonly SkillId[] };

/** What `missingFor` needs to know of a unit. */
export interface UnitSkills {
  readonly skills: readonly SkillId[];
  readonly activities: readonly { readonly develops: readonly SkillId[] }[];
}

export interface SkillMap {
  /** Every skill after all that it rests on. */
  readonly inOrder: readonly Skill[];
  readonly skillsById: ReadonlyMap<SkillId, Skill>;
  /** All that a skill rests on, directly or not, in order; nothing for an unknown skill. */
  restsOnAll(skill: SkillId): readonly SkillId[];
  /** All that rest on a skill, directly or not, in order. */
  supportsAll(skill: SkillId): readonly SkillId[];
  /**
   * The skills a unit's activities rest on that it does not develop itself and the student does not have, in order.
   * A skill the student has stands for all it rests on. Ongoing skills are never missing: every lesson works on them.
   */
  missingFor(unit: UnitSkills, hasSkill: (skill: SkillId) => boolean): readonly SkillId[];
}

/** Joins skills into a map; every duplicate and unknown prerequisite is named, and one cycle when there is any. */
export function createSkillMap(skills: readonly Skill[]): Result<SkillMap, readonly SkillMapFault[]> {
  const faults: SkillMapFault[] = [];
  const skillsById = new Map<SkillId, Skill>();
  for (const skill of skills) {
    if (skillsById.has(skill.id)) faults.push({ kind: 'DuplicateSkill', skill: skill.id });
    else skillsById.set(skill.id, skill);
  }
  for (const { id, restsOn } of skillsById.values())
    for (const needed of restsOn)
      if (!skillsById.has(needed))
        faults.push({
          kind: 'UnknownPrerequisite',
          skill: id,
          restsOn: needed,
          nearest: nearWord(needed, skillsById.keys()),
        });

  const inOrder = orderSkills(skillsById);
  if (inOrder.length < skillsById.size)
    faults.push({ kind: 'SkillCycle', cycle: findCycle(skillsById, inOrder) });
  if (faults.length > 0) return err(faults);

  const placeById = new Map(inOrder.map((skill, place) => [skill.id, place]));
  const sorted = (ids: Iterable<SkillId>) =>
    [...ids].sort((a, b) => (placeById.get(a) ?? 0) - (placeById.get(b) ?? 0));
  const supportsById = new Map<SkillId, SkillId[]>();
  for (const { id, restsOn } of inOrder)
    for (const needed of restsOn) supportsById.set(needed, [...(supportsById.get(needed) ?? []), id]);

  return ok({
    inOrder,
    skillsById,
    restsOnAll: (skill) => sorted(reach([skill], (id) => skillsById.get(id)?.restsOn ?? [])),
    supportsAll: (skill) => sorted(reach([skill], (id) => supportsById.get(id) ?? [])),
    missingFor(unit, hasSkill) {
      const developed = new Set(unit.activities.flatMap((activity) => activity.develops));
      const needed = reach(developed, (id) => (hasSkill(id) ? [] : (skillsById.get(id)?.restsOn ?? [])));
      return sorted(
        [...needed].filter(
          (id) => !developed.has(id) && !hasSkill(id) && skillsById.get(id)?.ongoing === false,
        ),
      );
    },
  });
}

/** `skill:a rests on skill:b rests on skill:a.` and the like, by title where one is known. */
export function formatSkillMapFault(fault: SkillMapFault, skills: readonly Skill[] = []): string {
  const name = (id: SkillId) => {
    const title = skills.find((skill) => skill.id === id)?.title;
    return title === undefined ? id : `“${title}”`;
  };
  switch (fault.kind) {
    case 'DuplicateSkill':
      return `${fault.skill} is in the map twice. Rename or remove one of the two.`;
    case 'UnknownPrerequisite':
      return `${name(fault.skill)} rests on ${fault.restsOn}, which is not in the map. ${
        fault.nearest === null ? 'Add it, or take it off.' : `Did you mean ${fault.nearest}?`
      }`;
    case 'SkillCycle':
      return `${fault.cycle.map(name).join(' rests on ')}. Take off one of these links.`;
  }
}

function orderSkills(skillsById: ReadonlyMap<SkillId, Skill>): readonly Skill[] {
  const waitingFor = new Map<SkillId, number>();
  const supports = new Map<SkillId, SkillId[]>();
  for (const { id, restsOn } of skillsById.values()) {
    const known = new Set(restsOn.filter((needed) => skillsById.has(needed)));
    waitingFor.set(id, known.size);
    for (const needed of known) supports.set(needed, [...(supports.get(needed) ?? []), id]);
  }
  const ordered: Skill[] = [];
  const ready = [...skillsById.keys()].filter((id) => waitingFor.get(id) === 0);
  for (const id of ready) {
    const skill = skillsById.get(id);
    if (skill !== undefined) ordered.push(skill);
    for (const next of supports.get(id) ?? []) {
      const left = (waitingFor.get(next) ?? 0) - 1;
      waitingFor.set(next, left);
      if (left === 0) ready.push(next);
    }
  }
  return ordered;
}

function findCycle(skillsById: ReadonlyMap<SkillId, Skill>, ordered: readonly Skill[]): readonly SkillId[] {
  const placed = new Set(ordered.map((skill) => skill.id));
  const stuck = (id: SkillId) => skillsById.has(id) && !placed.has(id);
  const path: SkillId[] = [];
  // Whatever is stuck rests on something stuck, so walking on must come back to where it has been.
  for (let at = [...skillsById.keys()].find(stuck); at !== undefined; ) {
    const met = path.indexOf(at);
    path.push(at);
    if (met >= 0) return path.slice(met);
    at = skillsById.get(at)?.restsOn.find(stuck);
  }
  return path;
}

function reach(from: Iterable<SkillId>, step: (id: SkillId) => readonly SkillId[]): ReadonlySet<SkillId> {
  const reached = new Set<SkillId>();
  const waiting = [...from];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop())
    for (const next of step(id))
      if (!reached.has(next)) {
        reached.add(next);
        waiting.push(next);
      }
  return reached;
}
