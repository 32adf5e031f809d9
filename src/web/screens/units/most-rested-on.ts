import type { Skill, SkillId } from '#planning';

/** The skill on which most others rest, by however many steps; of equals the first. Null where there is none. */
export function mostRestedOn<S extends Skill>(skills: readonly S[]): S | null {
  const above = new Map<SkillId, SkillId[]>();
  for (const skill of skills)
    for (const id of skill.restsOn) above.set(id, [...(above.get(id) ?? []), skill.id]);
  const countOf = (from: SkillId): number => {
    const seen = new Set<SkillId>([from]);
    // A set grows while it is walked, so this reaches all that rests on it, once each.
    for (const id of seen) for (const next of above.get(id) ?? []) seen.add(next);
    return seen.size - 1;
  };
  let most: { readonly skill: S; readonly count: number } | null = null;
  for (const skill of skills) {
    const count = countOf(skill.id);
    if (most === null || count > most.count) most = { skill, count };
  }
  return most?.skill ?? null;
}
