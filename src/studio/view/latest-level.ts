// The newest level of each skill; where members of a group differ on one day, the lowest of them.

import type { Level, SkillId } from '#planning';
import type { ObservationRecord } from '../record/records.ts';

/** The level at which each skill stands. The observations come in date order. */
export function latestLevels(observations: readonly ObservationRecord[]): ReadonlyMap<SkillId, Level> {
  const newestByPerson = new Map<string, ObservationRecord>();
  for (const o of observations) newestByPerson.set(`${o.skill} ${o.student ?? ''}`, o);
  const standing = new Map<SkillId, ObservationRecord>();
  for (const o of newestByPerson.values()) {
    const known = standing.get(o.skill);
    if (known === undefined || o.date > known.date || (o.date === known.date && o.level < known.level))
      standing.set(o.skill, o);
  }
  return new Map([...standing].map(([skill, o]) => [skill, o.level]));
}
