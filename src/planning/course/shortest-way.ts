// The shortest way to skills that are missing altogether: which units of the library to teach first. Fewest units, then
// fewest usual minutes. Best-first search (Dijkstra 1959) over sets of chosen units: a set decides what is still
// missing, and every way must choose some unit for the first missing skill, so branching on that one loses nothing.

import type { SkillId } from '../skill/skill.ts';
import type { UnitDocument, UnitId } from '../unit/unit.ts';
import type { SkillStanding } from './skill-standing.ts';

const mostUnits = 8;
/** Sets looked at before giving up with no way; a library of a hundred units stays far below. */
const mostSteps = 4000;

interface Way {
  readonly units: readonly UnitDocument[];
  readonly minutes: number;
}

/** Library units to teach, in teaching order; empty when the library has no way within eight units. */
export function findShortestWay(
  missing: readonly SkillId[],
  library: readonly UnitDocument[],
  standing: SkillStanding,
): readonly UnitId[] {
  const taughtById = new Map(library.map((unit) => [unit.id, skillsTaughtBy(unit)]));
  const queue: Way[] = [{ units: [], minutes: 0 }];
  const seen = new Set<string>();
  for (let step = 0; step < mostSteps; step++) {
    const way = takeBest(queue);
    if (way === null) return [];
    const needed = stillNeeded(missing, way.units, taughtById, standing);
    const next = needed[0];
    if (next === undefined) return inTeachingOrder(way.units, taughtById, standing);
    if (way.units.length >= mostUnits) continue;
    for (const unit of library) {
      if (way.units.includes(unit) || !taughtById.get(unit.id)?.has(next)) continue;
      const units = [...way.units, unit];
      const key = units
        .map((u) => u.id)
        .sort()
        .join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      queue.push({ units, minutes: way.minutes + usualMinutes(unit) });
    }
  }
  return [];
}

const usualMinutes = (unit: UnitDocument) => unit.activities.reduce((sum, a) => sum + a.minutes.usual, 0);

const skillsTaughtBy = (unit: UnitDocument): ReadonlySet<SkillId> =>
  new Set(unit.activities.flatMap((activity) => activity.develops));

function takeBest(queue: Way[]): Way | null {
  let best = 0;
  for (let i = 1; i < queue.length; i++) {
    const a = queue[i];
    const b = queue[best];
    if (a === undefined || b === undefined) continue;
    if (a.units.length < b.units.length || (a.units.length === b.units.length && a.minutes < b.minutes))
      best = i;
  }
  return queue.splice(best, 1)[0] ?? null;
}

function basesOf(skills: Iterable<SkillId>, standing: SkillStanding): readonly SkillId[] {
  return [...skills].flatMap((skill) => standing.skillOf(skill)?.restsOn ?? []);
}

function stillNeeded(
  missing: readonly SkillId[],
  units: readonly UnitDocument[],
  taughtById: ReadonlyMap<UnitId, ReadonlySet<SkillId>>,
  standing: SkillStanding,
): readonly SkillId[] {
  const taught = new Set(units.flatMap((unit) => [...(taughtById.get(unit.id) ?? [])]));
  const wanted = new Set([...missing, ...basesOf(taught, standing)]);
  return [...wanted].filter((skill) => !taught.has(skill) && !standing.has(skill)).sort();
}

function inTeachingOrder(
  units: readonly UnitDocument[],
  taughtById: ReadonlyMap<UnitId, ReadonlySet<SkillId>>,
  standing: SkillStanding,
): readonly UnitId[] {
  const left = [...units];
  const order: UnitId[] = [];
  const there = new Set<SkillId>();
  while (left.length > 0) {
    const ready = left.findIndex((unit) => {
      const taught = taughtById.get(unit.id) ?? new Set<SkillId>();
      return basesOf(taught, standing).every((s) => taught.has(s) || there.has(s) || standing.has(s));
    });
    // A ring among units has no first: the one listed first goes first.
    const [unit] = left.splice(Math.max(0, ready), 1);
    if (unit === undefined) break;
    order.push(unit.id);
    for (const skill of taughtById.get(unit.id) ?? []) there.add(skill);
  }
  return order;
}
